import { specimens } from "@/app/_server/generation";
import { answer, answerRefusal } from "@/app/_server/http/answer";
import { readJson } from "@/app/_server/http/read-json";
import { keepNextReady } from "@/app/_server/next/keep-next-ready";
import { currentCaller } from "@/app/_server/session";
import { handIn } from "@/app/_server/use-cases/hand-in";

const MAX_BYTES = 200_000;

/**
 * Hands the report in: `{ sequence, report }` as last written, or nothing to hand in what was saved last. The learner's next piece
 * is chosen from then on.
 */
export async function POST(request: Request, { params }: RouteContext<"/api/practice/[id]/hand-in">) {
  const { id } = await params;
  const read = await readJson(request, MAX_BYTES);
  if (!read.ok) return answerRefusal(read);
  const caller = await currentCaller();
  const handedIn = await handIn(caller, id, read.body);
  if (!handedIn.ok) return answerRefusal(handedIn);
  if (caller.actor) keepNextReady(caller.actor.id, specimens, caller.clock);
  return answer(handedIn);
}
