import { answer, answerRefusal } from "@/app/_server/http/answer";
import { currentCaller } from "@/app/_server/session";
import { readEnds } from "@/app/_server/use-cases/read-ends";

/** Both ends of a fillet joint, for feelers: `{ ends: { datum, farEnd } }`, see `EndViews` in lib/weld. */
export async function GET(_request: Request, { params }: RouteContext<"/api/practice/[id]/ends">) {
  const { id } = await params;
  const read = await readEnds(await currentCaller(), id);
  return read.ok ? answer({ ok: true, ends: read.ends }) : answerRefusal(read);
}
