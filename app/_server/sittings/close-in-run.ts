import type { Practice } from "@/lib/practice";
import { asked } from "@/lib/questions";
import type { SectionRun } from "@/lib/sittings";
import { readQuestions } from "@/prisma/stores/report-saves";
import { readRunPlace } from "@/prisma/stores/section-runs";
import { readSitting } from "@/prisma/stores/sittings";
import { readTruth } from "@/prisma/stores/specimens";
import { freshQuestions } from "../draw-questions";
import { refuse } from "../refusal";
import { changeSitting, runStep, whyMarked } from "./change-sitting";
import type { HandInOfRun } from "./hand-in-run";
import { sectionOf } from "./new-run";
import { keptInRun } from "./save-in-run";

/**
 * Closes the report of a section of a sitting, for good, with the last version sent along, and puts the questions of its
 * paper. Closing once more gives the same questions.
 */
export async function closeInRun(
  { id, runId, specimenId, section, criteria }: Practice & { readonly runId: string },
  { window, madeAt, sequence, report }: HandInOfRun,
  now: Date,
) {
  const place = await readRunPlace(runId);
  const stored = place && (await readSitting(place.sittingId));
  if (!stored) return refuse("no-such-run");
  const { questionCount } = sectionOf(stored.sitting.paper, section);
  if (questionCount === 0 || !criteria) return refuse("no-questions");
  const answers = await readTruth(specimenId);
  if (!answers) return refuse("specimen-not-made");
  const questions = freshQuestions(section, answers.truth, criteria, questionCount);
  let kept: SectionRun | undefined;
  const closed = await changeSitting(
    stored.sitting.id,
    now,
    (whole, before) => {
      const marked = whyMarked(before, runId);
      if (marked) return { next: whole, code: marked };
      const find = (runs: readonly SectionRun[]) => runs.find((run) => run.id === runId);
      const isLast = sequence !== undefined && report !== undefined && find(whole.runs)?.reportClosedAt === null;
      const saved = isLast
        ? runStep(whole, runId, { kind: "save", sequence, window, madeAt, report }, now)
        : { next: whole };
      const change = saved.code
        ? saved
        : runStep(saved.next, runId, { kind: "close-report", windowId: window.id, madeAt }, now);
      kept = find(change.next.runs);
      return { ...change, questions };
    },
    runId,
  );
  if (!closed.ok) return refuse(closed.code, kept && keptInRun(kept));
  const put = await readQuestions(id);
  return {
    ok: true,
    sequence: kept?.sequence ?? 0,
    savedAt: kept?.savedAt ?? null,
    reportClosedAt: kept?.reportClosedAt ?? now,
    questions: put.map(asked),
  } as const;
}
