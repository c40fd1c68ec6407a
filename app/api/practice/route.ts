import { specimens } from "@/app/_server/generation";
import { answer, answerRefusal } from "@/app/_server/http/answer";
import { readJson } from "@/app/_server/http/read-json";
import { currentCaller } from "@/app/_server/session";
import { startPractice } from "@/app/_server/use-cases/start-practice";

const MAX_BYTES = 1_000;

/** Starts a practice: `{ section?, passMark?, criteriaId?, book?, piece? }`, answered with its id. */
export async function POST(request: Request): Promise<Response> {
  const read = await readJson(request, MAX_BYTES);
  if (!read.ok) return answerRefusal(read);
  const started = await startPractice(await currentCaller(), read.body ?? {}, specimens);
  return started.ok ? answer({ ok: true, id: started.id }, 201) : answerRefusal(started);
}
