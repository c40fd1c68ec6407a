import { observationsOf, type SectionObservations } from "@/lib/progress";
import type { Report } from "@/lib/report";
import type { SectionResult } from "@/lib/results";
import type { ReviewAct } from "@/lib/review";
import { clockOf, type SectionRun, type Sitting } from "@/lib/sittings";
import { seenItems, type Truth } from "@/lib/specimen";
import { type HandedInPractice, readHandedInPractice } from "@/prisma/stores/practices";
import type { ObservableAttempt } from "@/prisma/stores/progress";
import { readRunPlace } from "@/prisma/stores/section-runs";
import { readSitting } from "@/prisma/stores/sittings";

/** What a marked section tells of its learner. */
export const observe = (
  result: SectionResult,
  truth: Truth,
  report: Report,
  seconds: number | null,
  acts: readonly ReviewAct[] = [],
): SectionObservations =>
  observationsOf({ result, acts, truths: seenItems(truth), clutter: truth.clutter, calls: report.calls, seconds });

/** A practice that lay longer than this was left and come back to, ms. Common practice, no source. */
const LONGEST = 3 * 60 * 60_000;

/** Time at a piece for practice, s, as far as start and hand-in tell it; null where it was left lying. */
export function secondsOfPractice(startedAt: Date, handedInAt: Date): number | null {
  const taken = handedInAt.getTime() - startedAt.getTime();
  return taken > LONGEST ? null : Math.max(0, Math.round(taken / 1000));
}

/** Time at a section of a sitting by its clock, s; null where it was never started. */
export const secondsOfRun = (run: SectionRun, sitting: Sitting): number | null =>
  run.startedAt && run.closedAt ? Math.round(clockOf(run, sitting, run.closedAt).elapsed / 1000) : null;

/**
 * The same of what is stored, by result, report and truth as they were at hand-in and what tutors said to it since; null where it
 * is marked no longer.
 */
export async function observeStored({ practiceId, section }: ObservableAttempt): Promise<SectionObservations | null> {
  const stored = await readHandedInPractice(practiceId);
  const marked = stored?.sections.find((one) => one.section === section);
  return stored && marked
    ? observe(marked.result, stored.truth, stored.practice.report, await secondsOf(stored), marked.acts)
    : null;
}

async function secondsOf({ practice: { runId, startedAt, handedInAt } }: HandedInPractice): Promise<number | null> {
  if (runId === null) return handedInAt && secondsOfPractice(startedAt, handedInAt);
  const place = await readRunPlace(runId);
  const stored = place && (await readSitting(place.sittingId));
  const found = stored?.runs.find(({ run }) => run.id === runId);
  return stored && found ? secondsOfRun(found.run, stored.sitting) : null;
}
