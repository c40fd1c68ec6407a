import { specimens } from "@/app/_server/generation";
import { answer, answerRefusal } from "@/app/_server/http/answer";
import { readJson } from "@/app/_server/http/read-json";
import { currentCaller } from "@/app/_server/session";
import { renewSpecimen } from "@/app/_server/use-cases/renew-specimen";

const MAX_BYTES = 1_000;

/** Another plate for a practice whose plate could not be made. */
export async function POST(request: Request, { params }: RouteContext<"/api/practice/[id]/specimen">) {
  const { id } = await params;
  const read = await readJson(request, MAX_BYTES);
  if (!read.ok) return answerRefusal(read);
  const renewed = await renewSpecimen(await currentCaller(), id, specimens);
  return renewed.ok ? answer(renewed) : answerRefusal(renewed);
}
