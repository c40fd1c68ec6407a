import { answer, answerRefusal } from "@/app/_server/http/answer";
import { readJson } from "@/app/_server/http/read-json";
import { currentCaller } from "@/app/_server/session";
import { handIn } from "@/app/_server/use-cases/hand-in";

const MAX_BYTES = 200_000;

/** Hands the report in: `{ sequence, report }` as last written, or nothing to hand in what was saved last. */
export async function POST(request: Request, { params }: RouteContext<"/api/practice/[id]/hand-in">) {
  const { id } = await params;
  const read = await readJson(request, MAX_BYTES);
  if (!read.ok) return answerRefusal(read);
  const handedIn = await handIn(await currentCaller(), id, read.body);
  return handedIn.ok ? answer(handedIn) : answerRefusal(handedIn);
}
