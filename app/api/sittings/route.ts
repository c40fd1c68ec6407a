import { specimens } from "@/app/_server/generation";
import { answer, answerRefusal } from "@/app/_server/http/answer";
import { readJson } from "@/app/_server/http/read-json";
import { currentCaller } from "@/app/_server/session";
import { planSitting } from "@/app/_server/use-cases/plan-sitting";

const MAX_BYTES = 20_000;

/** Plans a sitting: `{ classId, paperId, plannedAt, who, learnerIds?, sections? }`, answered with its id. */
export async function POST(request: Request): Promise<Response> {
  const read = await readJson(request, MAX_BYTES);
  if (!read.ok) return answerRefusal(read);
  const planned = await planSitting(await currentCaller(), read.body, specimens);
  return planned.ok ? answer(planned, 201) : answerRefusal(planned);
}
