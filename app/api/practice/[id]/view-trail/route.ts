import { answer, answerRefusal } from "@/app/_server/http/answer";
import { readJson } from "@/app/_server/http/read-json";
import { currentCaller } from "@/app/_server/session";
import { keepViewTrail } from "@/app/_server/use-cases/keep-view-trail";

/** No trail weighs more: every count of every aspect told by itself is about half of it. */
const MAX_BYTES = 100_000;

/** Keeps where the learner has looked so far: `{ windowId, number, trail }`, answered with `{ number }`. */
export async function PUT(request: Request, { params }: RouteContext<"/api/practice/[id]/view-trail">) {
  const { id } = await params;
  const read = await readJson(request, MAX_BYTES);
  if (!read.ok) return answerRefusal(read);
  const kept = await keepViewTrail(await currentCaller(), id, read.body);
  return kept.ok ? answer(kept) : answerRefusal(kept);
}
