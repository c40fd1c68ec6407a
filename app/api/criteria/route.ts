import { answer, answerRefusal } from "@/app/_server/http/answer";
import { MAX_CRITERIA_BYTES } from "@/app/_server/http/criteria-limit";
import { readJson } from "@/app/_server/http/read-json";
import { currentCaller } from "@/app/_server/session";
import { addCriteria } from "@/app/_server/use-cases/add-criteria";

/** Keeps new criteria: `{ basedOn, own }`, answered with `{ id, updatedAt }`. */
export async function POST(request: Request): Promise<Response> {
  const read = await readJson(request, MAX_CRITERIA_BYTES);
  if (!read.ok) return answerRefusal(read);
  const added = await addCriteria(await currentCaller(), read.body);
  return added.ok ? answer(added, 201) : answerRefusal(added);
}
