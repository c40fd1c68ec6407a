import { specimens } from "@/app/_server/generation";
import { answer, answerRefusal } from "@/app/_server/http/answer";
import { readJson } from "@/app/_server/http/read-json";
import { currentCaller } from "@/app/_server/session";
import { enterSitting } from "@/app/_server/use-cases/enter-sitting";

const MAX_BYTES = 1_000;

/** A learner comes in, or says that they are still there: answered with `{ now, sitting }`, see `OwnSitting`. */
export async function POST(request: Request, { params }: RouteContext<"/api/sittings/[id]/enter">) {
  const { id } = await params;
  const read = await readJson(request, MAX_BYTES);
  if (!read.ok) return answerRefusal(read);
  const entered = await enterSitting(await currentCaller(), id, specimens);
  return entered.ok ? answer(entered) : answerRefusal(entered);
}
