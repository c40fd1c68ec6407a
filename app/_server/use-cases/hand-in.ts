import { readTruth } from "@/prisma/stores/specimens";
import type { Caller } from "../caller";
import { markPractice } from "../mark-practice";
import { requireOwnPractice } from "../permissions";
import { secondsOfPractice } from "../progress/observe";
import { refuse } from "../refusal";
import { handInRun } from "../sittings/hand-in-run";
import { readLastVersion } from "./last-version";
import { keptVersion, saveReport } from "./save-report";

/**
 * Hands a report in, for good: keeps the last version sent along, marks it, and stores truth, report and marks as
 * values. Nothing is accepted afterwards, and a second hand-in changes nothing. Where the report was not closed before, nobody
 * has seen the questions: they are drawn all the same and stand unanswered in the marks. In a sitting the clock and the one
 * live window decide first, and a second hand-in is answered like the first.
 */
export async function handIn(caller: Caller, id: string, input: unknown) {
  const own = await requireOwnPractice(caller, id);
  if (!own.ok) return own;
  const { practice } = own;
  if (practice.runId !== null) {
    const now = caller.clock();
    const read = readLastVersion(input, practice.section, now);
    return read.ok ? handInRun(practice.runId, read.last, now) : read;
  }
  if (practice.state === "handed-in") return refuse("already-handed-in");
  if (input !== undefined) {
    const saved = await saveReport(caller, id, input);
    if (!saved.ok) return saved;
  }
  const latest = await requireOwnPractice(caller, id);
  if (!latest.ok) return latest;
  if (!(await readTruth(latest.practice.specimenId))) return refuse("specimen-not-made");
  const handedInAt = caller.clock();
  const seconds = secondsOfPractice(latest.practice.startedAt, handedInAt);
  if (await markPractice(latest.practice, handedInAt, seconds)) return { ok: true } as const;
  // another window saved or handed in while this one was being marked
  const now = await requireOwnPractice(caller, id);
  if (!now.ok) return now;
  if (now.practice.state === "handed-in") return refuse("already-handed-in");
  return refuse("stale-save", keptVersion(now.practice));
}
