import type { Report } from "../report";
import type { Practice } from "./practice";

export type SaveAnswer = "accept" | "repeat" | "stale" | "handed-in";

/**
 * What to do with a save of `report` numbered `sequence`, when `stored` is what is kept. A higher number is newer and is
 * accepted; the very same save again is a repeat (a packet sent twice); anything else is stale: another window is ahead.
 */
export function answerSave(
  stored: Pick<Practice, "state" | "sequence" | "report">,
  sequence: number,
  report: Report,
): SaveAnswer {
  if (stored.state === "handed-in") return "handed-in";
  if (sequence > stored.sequence) return "accept";
  return sequence === stored.sequence && isSameReport(stored.report, report) ? "repeat" : "stale";
}

function isSameReport(a: Report, b: Report): boolean {
  return fingerprint(a) === fingerprint(b);
}

/** Independent of the order of the keys. */
function fingerprint(report: Report): string {
  return JSON.stringify([
    report.version,
    report.calls.map((call) => Object.entries(call).sort(([a], [b]) => (a < b ? -1 : 1))),
  ]);
}
