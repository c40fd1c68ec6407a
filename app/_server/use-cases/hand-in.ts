import type { Practice } from "@/lib/practice";
import { DEFAULT_SETTINGS, markSection } from "@/lib/scoring";
import { handIn as storeHandIn } from "@/prisma/stores/practices";
import { readTruth } from "@/prisma/stores/specimens";
import type { Caller } from "../caller";
import { requireOwnPractice } from "../permissions";
import { randomId } from "../random-id";
import { refuse } from "../refusal";
import { keptVersion, saveReport } from "./save-report";

/**
 * Hands a report in, for good: keeps the last version sent along, marks it, and stores truth, report and marks as
 * values. Nothing is accepted afterwards, and a second hand-in changes nothing.
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
  const { id, specimenId, report, sequence, section, passMark, criteria } = practice;
  const answers = await readTruth(specimenId);
  if (!answers) return refuse("specimen-not-made");
  const result = markSection(section, answers.truth, report, { ...DEFAULT_SETTINGS[section], passMark, criteria });
  const { mark, passed, ruleVersion } = result;
  const isStored = await storeHandIn({
    id,
    sequence,
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
