import { answer, answerRefusal } from "@/app/_server/http/answer";
import { readJson } from "@/app/_server/http/read-json";
import { currentCaller } from "@/app/_server/session";
import { saveReport } from "@/app/_server/use-cases/save-report";

/** A full report of 200 indications takes about 30 kB. */
const MAX_BYTES = 200_000;

/**
 * Keeps a version of the report: `{ sequence, report }`, answered with `{ sequence, savedAt }`. A stale one is refused with
 * 409, the code "stale-save" and the newer `{ sequence, report, savedAt }`.
 */
export async function PUT(request: Request, { params }: RouteContext<"/api/practice/[id]/report">) {
  const { id } = await params;
  const read = await readJson(request, MAX_BYTES);
  if (!read.ok) return answerRefusal(read);
  const saved = await saveReport(await currentCaller(), id, read.body);
  return saved.ok ? answer(saved) : answerRefusal(saved);
}
