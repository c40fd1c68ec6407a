import { answer, answerRefusal } from "@/app/_server/http/answer";
import { currentCaller } from "@/app/_server/session";
import { readClock } from "@/app/_server/use-cases/start-section";

/** How the learner's section stands: `{ now, run }`, see `LiveRun`. */
export async function GET(_request: Request, { params }: RouteContext<"/api/runs/[id]">) {
  const { id } = await params;
  const read = await readClock(await currentCaller(), id);
  return read.ok ? answer(read) : answerRefusal(read);
}
