import { answer, answerRefusal } from "@/app/_server/http/answer";
import { MAX_CRITERIA_BYTES } from "@/app/_server/http/criteria-limit";
import { readJson } from "@/app/_server/http/read-json";
import { currentCaller } from "@/app/_server/session";
import { changeCriteria } from "@/app/_server/use-cases/change-criteria";

/**
 * Keeps a change of criteria: `{ basedOn, own, seen }`, answered with `{ updatedAt }`. One that has not seen the stored
 * version is refused with 409, the code "newer-criteria" and its `updatedAt`.
 */
export async function PUT(request: Request, { params }: RouteContext<"/api/criteria/[id]">) {
  const { id } = await params;
  const read = await readJson(request, MAX_CRITERIA_BYTES);
  if (!read.ok) return answerRefusal(read);
  const changed = await changeCriteria(await currentCaller(), id, read.body);
  return changed.ok ? answer(changed) : answerRefusal(changed);
}
