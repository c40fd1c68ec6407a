import { goingTime, type Pause, stoppedStretches } from "./stopped-time";

/** Minutes that a tutor gave on top. */
export interface AddedMinutes {
  readonly minutes: number;
  readonly at: Date;
  /** Id of the tutor. */
  readonly by: string;
  readonly reason: string;
}

/** A closed section that a tutor opened again: from then on its clock has so many minutes, whatever was left before. */
export interface Reopening extends AddedMinutes {
  /** When it had been closed; the time from there to `at` is nobody's. */
  readonly closedAt: Date;
}

/** The clock of one learner's section. */
export interface Timing {
  readonly startedAt: Date;
  /** As the paper has it. */
  readonly minutes: number;
  /** The learner's extra time, 1 or more: multiplies the paper's minutes, and no minutes that a tutor gave. */
  readonly factor: number;
  readonly addedMinutes: readonly AddedMinutes[];
  readonly reopenings: readonly Reopening[];
  /** Of the whole sitting and of this learner; where they overlap, they count once. */
  readonly pauses: readonly Pause[];
}

const MINUTE = 60_000;

/** From when the clock counts, and how much it has to give, ms. */
function allowance({ startedAt, minutes, factor, addedMinutes, reopenings }: Timing) {
  const last = reopenings.at(-1);
  const since = last?.at ?? startedAt;
  const own = last ? last.minutes : minutes * factor;
  const added = addedMinutes.filter(({ at }) => !last || at >= last.at).reduce((sum, one) => sum + one.minutes, 0);
  return { since: since.getTime(), ms: Math.round((own + added) * MINUTE) };
}

/**
 * When the section ends by the clock, as far as is known at `now`: while a pause lasts, it moves on with `now`. Once it has
 * passed, it stays.
 */
export function deadline(timing: Timing, now: Date): Date {
  const { since, ms } = allowance(timing);
  let left = ms;
  let at = since;
  for (const { from, to } of stoppedStretches(timing.pauses, since, now.getTime())) {
    // the last moment before the clock stood was the end already
    if (from - at >= left) break;
    left -= from - at;
    at = to;
  }
  return new Date(at + left);
}

/** How much the clock has to give in all, ms: from the start, or from when the section was opened again. */
export const allowed = (timing: Timing): number => allowance(timing).ms;

/** Time left, ms; 0 once the deadline has passed. */
export function remaining(timing: Timing, now: Date): number {
  const { since, ms } = allowance(timing);
  return Math.max(0, ms - goingTime(timing.pauses, since, now.getTime()));
}

/** Time spent on the section, ms: without pauses, and without the time in which it was closed before it was opened again. */
export function elapsed(timing: Timing, now: Date): number {
  const closed = timing.reopenings.map(({ closedAt, at }) => ({ from: closedAt, to: at }));
  return goingTime([...timing.pauses, ...closed], timing.startedAt.getTime(), now.getTime());
}
