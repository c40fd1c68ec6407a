import type { Practice } from "@/lib/practice";
import { DEFAULT_SETTINGS, markSection } from "@/lib/scoring";
import { readQuestions, handIn as storeHandIn } from "@/prisma/stores/practices";
import { readTruth } from "@/prisma/stores/specimens";
import type { Caller } from "../caller";
import { freshQuestions } from "../draw-questions";
import { requireOwnPractice } from "../permissions";
import { randomId } from "../random-id";
import { refuse } from "../refusal";
import { keptVersion, saveReport } from "./save-report";

/**
 * Hands a report in, for good: keeps the last version sent along, marks it, and stores truth, report and marks as
 * values. Nothing is accepted afterwards, and a second hand-in changes nothing. Where the report was not closed before, nobody
 * has seen the questions: they are drawn all the same and stand unanswered in the marks.
 */
export async function handIn(caller: Caller, id: string, input: unknown) {
  const own = await requireOwnPractice(caller, id);
  if (!own.ok) return own;
  if (own.practice.state === "handed-in") return refuse("already-handed-in");
  if (input !== undefined) {
    const saved = await saveReport(caller, id, input);
    if (!saved.ok) return saved;
  }
  const latest = await requireOwnPractice(caller, id);
  if (!latest.ok) return latest;
  return closePractice(caller, latest.practice);
}

async function closePractice(caller: Caller, practice: Practice) {
  const { id, specimenId, report, sequence, section, passMark, criteria, reportClosedAt } = practice;
  const answers = await readTruth(specimenId);
  if (!answers) return refuse("specimen-not-made");
  const { truth } = answers;
  const questions = reportClosedAt ? await readQuestions(id) : freshQuestions(section, truth, criteria);
  const settings = { ...DEFAULT_SETTINGS[section], passMark, criteria };
  const result = markSection(section, truth, report, settings, questions);
  const { mark, passed, ruleVersion } = result;
  const isStored = await storeHandIn({
    id,
    sequence,
    reportClosedAt,
    ...answers,
    handedInAt: caller.clock(),
    sections: [{ id: randomId(), section, passMark, markThousandths: mark, isPassed: passed, ruleVersion, result }],
  });
  if (isStored) return { ok: true } as const;
  // another window saved or handed in while this one was being marked
  const now = await requireOwnPractice(caller, id);
  if (!now.ok) return now;
  if (now.practice.state === "handed-in") return refuse("already-handed-in");
  return refuse("stale-save", keptVersion(now.practice));
}
