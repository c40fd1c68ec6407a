import type { Report } from "../report";
import type { Practice } from "./practice";

export type SaveAnswer = "accept" | "repeat" | "stale" | "report-open" | "report-closed" | "handed-in";

/** Which window writes, and the newest version it had seen on the server when it began the edits it sends. */
export interface WritingWindow {
  readonly id: string;
  readonly base: number;
}

/**
 * What to do with a save of `report` numbered `sequence`, when `stored` is what is kept. A higher number is accepted
 * unless it comes from a window that has not seen what another window saved meanwhile; the very same save again is a
 * repeat (a packet sent twice); anything else is stale: another window is ahead. Once the report is closed nothing but the
 * answers may differ from what is kept, and before that there are none.
 */
export function answerSave(
  stored: Pick<Practice, "state" | "sequence" | "report" | "windowId" | "reportClosedAt">,
  sequence: number,
  report: Report,
  window?: WritingWindow,
): SaveAnswer {
  if (stored.state === "handed-in") return "handed-in";
  const isClosed = stored.reportClosedAt !== null;
  if (isClosed && !isSameButAnswers(stored.report, report)) return "report-closed";
  if (!isClosed && Object.keys(report.answers).length > 0) return "report-open";
  const hasSeen = !window || stored.sequence <= window.base || stored.windowId === window.id;
  if (sequence > stored.sequence) return hasSeen ? "accept" : "stale";
  return sequence === stored.sequence && isSameReport(stored.report, report) ? "repeat" : "stale";
}

function isSameReport(a: Report, b: Report): boolean {
  return isSameButAnswers(a, b) && inOrder(a.answers) === inOrder(b.answers);
}

/** Whether two versions say the same of the piece, whatever they answer to the questions. */
export function isSameButAnswers(a: Report, b: Report): boolean {
  return fingerprint(a) === fingerprint(b);
}

/** Independent of the order of the keys. */
function fingerprint(report: Report): string {
  return JSON.stringify([
    report.version,
    report.pieceSentence,
    [...report.calls, ...report.measures, ...report.statements].map(inOrder),
  ]);
}

const inOrder = (entry: object): string => JSON.stringify(Object.entries(entry).sort(([a], [b]) => (a < b ? -1 : 1)));
