import { answer, answerRefusal } from "@/app/_server/http/answer";
import { readJson } from "@/app/_server/http/read-json";
import { currentCaller } from "@/app/_server/session";
import { finishEyeRound } from "@/app/_server/use-cases/finish-eye-round";

const MAX_BYTES = 100;

/** Ends a round where it stands, answered with it. */
export async function POST(request: Request, { params }: RouteContext<"/api/eye/rounds/[id]/finish">) {
  const read = await readJson(request, MAX_BYTES);
  if (!read.ok) return answerRefusal(read);
  const { id } = await params;
  const finished = await finishEyeRound(await currentCaller(), id);
  return finished.ok ? answer(finished) : answerRefusal(finished);
}
