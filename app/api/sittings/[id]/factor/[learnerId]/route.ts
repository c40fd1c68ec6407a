import { answer, answerRefusal } from "@/app/_server/http/answer";
import { readJson } from "@/app/_server/http/read-json";
import { currentCaller } from "@/app/_server/session";
import { changeFactor } from "@/app/_server/use-cases/govern-run";

const MAX_BYTES = 2_000;

/** Changes a learner's extra time in a sitting: `{ factor, reason }`. */
export async function POST(request: Request, { params }: RouteContext<"/api/sittings/[id]/factor/[learnerId]">) {
  const { id, learnerId } = await params;
  const read = await readJson(request, MAX_BYTES);
  if (!read.ok) return answerRefusal(read);
  const changed = await changeFactor(await currentCaller(), id, learnerId, read.body);
  return changed.ok ? answer(changed) : answerRefusal(changed);
}
