import { answer, answerRefusal } from "@/app/_server/http/answer";
import { readJson } from "@/app/_server/http/read-json";
import { currentCaller } from "@/app/_server/session";
import { closeReport } from "@/app/_server/use-cases/close-report";

const MAX_BYTES = 200_000;

/**
 * Closes the report: `{ sequence, report }` as last written, or nothing to close what was saved last. Answered with the
 * questions, `{ sequence, savedAt, reportClosedAt, questions: { id, stem, options }[] }`.
 */
export async function POST(request: Request, { params }: RouteContext<"/api/practice/[id]/close-report">) {
  const { id } = await params;
  const read = await readJson(request, MAX_BYTES);
  if (!read.ok) return answerRefusal(read);
  const closed = await closeReport(await currentCaller(), id, read.body);
  return closed.ok ? answer(closed) : answerRefusal(closed);
}
