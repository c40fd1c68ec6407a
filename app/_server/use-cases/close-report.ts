import type { Practice } from "@/lib/practice";
import { asked } from "@/lib/questions";
import { readQuestions, closeReport as storeClosing } from "@/prisma/stores/report-saves";
import { readTruth } from "@/prisma/stores/specimens";
import type { Caller } from "../caller";
import { freshQuestions } from "../draw-questions";
import { requireOwnPractice } from "../permissions";
import { refuse } from "../refusal";
import { closeInRun } from "../sittings/close-in-run";
import { readLastVersion } from "./last-version";
import { keptVersion, saveReport } from "./save-report";

/**
 * Closes a report, for good: keeps the last version sent along and draws the questions, which speak of what is on the piece.
 * From then on only answers to them are kept. Closing once more gives the same questions.
 */
export async function closeReport(caller: Caller, id: string, input: unknown) {
  const own = await requireOwnPractice(caller, id);
  if (!own.ok) return own;
  const { practice } = own;
  const { runId } = practice;
  if (runId !== null) {
    const now = caller.clock();
    const read = readLastVersion(input, practice.section, now);
    return read.ok ? closeInRun({ ...practice, runId }, read.last, now) : read;
  }
  if (own.practice.state === "handed-in") return refuse("already-handed-in");
  if (!own.practice.criteria) return refuse("no-questions");
  if (input !== undefined) {
    const saved = await saveReport(caller, id, input);
    if (!saved.ok) {
      // it was closed before, and answered since
      if (saved.code !== "stale-save" || !own.practice.reportClosedAt) return saved;
      return refuse("report-closed", keptVersion(own.practice));
    }
  }
  const latest = await requireOwnPractice(caller, id);
  if (!latest.ok) return latest;
  return closePractice(caller, latest.practice);
}

async function closePractice(caller: Caller, practice: Practice) {
  const { id, specimenId, section, criteria, sequence } = practice;
  if (practice.reportClosedAt === null) {
    const answers = await readTruth(specimenId);
    if (!answers) return refuse("specimen-not-made");
    const questions = freshQuestions(section, answers.truth, criteria);
    await storeClosing(id, { sequence, questions, reportClosedAt: caller.clock() });
  }
  const now = await requireOwnPractice(caller, id);
  if (!now.ok) return now;
  if (now.practice.state === "handed-in") return refuse("already-handed-in");
  const { savedAt, reportClosedAt } = now.practice;
  // another window saved while the questions were drawn
  if (reportClosedAt === null) return refuse("stale-save", keptVersion(now.practice));
  const questions = await readQuestions(id);
  return {
    ok: true,
    sequence: now.practice.sequence,
    savedAt,
    reportClosedAt,
    questions: questions.map(asked),
  } as const;
}
