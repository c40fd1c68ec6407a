import { pausesOf, type SectionRun, timingOf } from "./run";
import type { SittingWithRuns } from "./sitting";
import { deadline } from "./timing";

/**
 * When the paper is over for everybody, as far as is known at `now`: the latest end of any section that was started, and,
 * until the sitting has been closed once, of the time that every learner has for the whole paper, breaks and extra time
 * included. Null before the sitting has begun, or where nobody sits it.
 */
export function lastDeadline({ sitting, runs }: SittingWithRuns, now: Date): Date | null {
  const counted = runs.filter(({ state }) => state !== "void");
  const ends = counted.flatMap((run) => {
    const timing = timingOf(run, sitting);
    return timing === null ? [] : [deadline(timing, run.closedAt ?? now)];
  });
  if (!sitting.wasClosed) {
    const learners = [...new Set(counted.map(({ userId }) => userId))];
    for (const userId of learners) {
      const end = windowEnd(
        counted.filter((run) => run.userId === userId),
        { sitting, runs },
        now,
      );
      if (end !== null) ends.push(end);
    }
  }
  return ends.length === 0 ? null : new Date(Math.max(...ends.map((end) => end.getTime())));
}

/** When one learner's time for the whole paper is over, counted from when the sitting began. */
function windowEnd(own: readonly SectionRun[], { sitting }: SittingWithRuns, now: Date): Date | null {
  const { begunAt, paper } = sitting;
  if (begunAt === null) return null;
  const factor = Math.max(...own.map((run) => run.factor));
  const minutes = own.reduce((sum, run) => sum + run.minutes * run.factor, 0) + breaks(own.length, paper) * factor;
  return deadline(
    {
      startedAt: begunAt,
      minutes,
      factor: 1,
      addedMinutes: own.flatMap(({ addedMinutes }) => addedMinutes),
      reopenings: [],
      pauses: own.flatMap((run) => pausesOf(run, sitting)),
    },
    now,
  );
}

const breaks = (sections: number, { breakMinutes }: { readonly breakMinutes: number }): number =>
  Math.max(0, sections - 1) * breakMinutes;
