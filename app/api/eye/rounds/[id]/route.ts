import { specimens } from "@/app/_server/generation";
import { answer, answerRefusal } from "@/app/_server/http/answer";
import { currentCaller } from "@/app/_server/session";
import { readOwnEyeRound } from "@/app/_server/use-cases/read-eye-round";

/** A round of a drill for the eye as it stands: `EyeRoundView` of lib/eye. */
export async function GET(_request: Request, { params }: RouteContext<"/api/eye/rounds/[id]">) {
  const { id } = await params;
  const read = await readOwnEyeRound(await currentCaller(), id, specimens);
  return read.ok ? answer(read) : answerRefusal(read);
}
