import { specimens } from "@/app/_server/generation";
import { answer, answerRefusal } from "@/app/_server/http/answer";
import { currentCaller } from "@/app/_server/session";
import { followProgress } from "@/app/_server/use-cases/follow-progress";

/** How far the plate is: `{ state: "making" | "made" | "failed", stage }`. */
export async function GET(_request: Request, { params }: RouteContext<"/api/practice/[id]/progress">) {
  const { id } = await params;
  const followed = await followProgress(await currentCaller(), id, specimens);
  return followed.ok ? answer({ ok: true, ...followed.plate }) : answerRefusal(followed);
}
