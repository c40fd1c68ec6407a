import { answer, answerRefusal } from "@/app/_server/http/answer";
import { readJson } from "@/app/_server/http/read-json";
import { currentCaller } from "@/app/_server/session";
import { answerEyeTask } from "@/app/_server/use-cases/answer-eye-task";

const MAX_BYTES = 500;

/** Takes the answer to a task (`eyeAnswerSchema` of lib/eye): `{ told, round }`, what was there and how the round stands then. */
export async function POST(request: Request, { params }: RouteContext<"/api/eye/tasks/[id]/answer">) {
  const read = await readJson(request, MAX_BYTES);
  if (!read.ok) return answerRefusal(read);
  const { id } = await params;
  const answered = await answerEyeTask(await currentCaller(), id, read.body);
  return answered.ok ? answer(answered) : answerRefusal(answered);
}
