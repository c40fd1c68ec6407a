import { EMPTY_REPORT, type Report } from "../report";
import type { Section } from "../results";
import type { Sitting } from "./sitting";
import { endPause, type Pause, standingSince } from "./stopped-time";
import { type AddedMinutes, deadline, elapsed, type Reopening, remaining, type Timing } from "./timing";

/**
 * "waiting" until the learner starts it; "expired": closed with the last save by the clock or by the tutor (`closedBy`);
 * "void": does not count. A run that is still waiting when its sitting is closed was not sat.
 */
export const RUN_STATES = ["waiting", "running", "paused", "handed-in", "expired", "void"] as const;
export type RunState = (typeof RUN_STATES)[number];

/** Extra time of a learner that a tutor changed. */
export interface FactorChange {
  readonly factor: number;
  readonly at: Date;
  readonly by: string;
  readonly reason: string;
}

/** Why something does not count, and who said so. */
export interface Voided {
  readonly at: Date;
  readonly by: string;
  readonly reason: string;
}

/** One learner at one section of a sitting. Knows nothing of what there is to find. */
export interface SectionRun {
  readonly id: string;
  readonly userId: string;
  readonly section: Section;
  /** The parallel piece that follows a section just short of its pass mark. */
  readonly isBorderline: boolean;
  readonly state: RunState;
  /** As the paper has it; `factor` multiplies it. */
  readonly minutes: number;
  readonly factor: number;
  readonly factorChanges: readonly FactorChange[];
  readonly addedMinutes: readonly AddedMinutes[];
  readonly reopenings: readonly Reopening[];
  /** Of this run alone. */
  readonly pauses: readonly Pause[];
  readonly startedAt: Date | null;
  /** Once closed: when. By the clock it is the deadline, however late anybody looked. */
  readonly closedAt: Date | null;
  readonly closedBy: "learner" | "clock" | "tutor" | null;
  readonly voided: Voided | null;
  readonly report: Report;
  /** From then on the report stands, and the questions on the piece are shown. */
  readonly reportClosedAt: Date | null;
  /** Number of the last save that was accepted; 0 before the first. */
  readonly sequence: number;
  /** The window that sent it; null before the first. */
  readonly windowId: string | null;
  readonly savedAt: Date | null;
  /** The one window that may write; every other one is read-only. Null before the start. */
  readonly liveWindowId: string | null;
  /** When the learner first saw the mark sheet, and with it what there was to find. */
  readonly marksSeenAt: Date | null;
}

/** A run that waits for its learner. */
export const newRun = (
  run: Pick<SectionRun, "id" | "userId" | "section" | "minutes" | "factor" | "isBorderline">,
): SectionRun => ({
  ...run,
  state: "waiting",
  factorChanges: [],
  addedMinutes: [],
  reopenings: [],
  pauses: [],
  startedAt: null,
  closedAt: null,
  closedBy: null,
  voided: null,
  report: EMPTY_REPORT,
  reportClosedAt: null,
  sequence: 0,
  windowId: null,
  savedAt: null,
  liveWindowId: null,
  marksSeenAt: null,
});

/** Whether the learner is at it; a paused one is. */
export const isOpen = ({ state }: Pick<SectionRun, "state">): boolean => state === "running" || state === "paused";

/** The clock of a run; null before it is started. */
export function timingOf(run: SectionRun, sitting: Pick<Sitting, "pauses">): Timing | null {
  const { startedAt, minutes, factor, addedMinutes, reopenings } = run;
  if (startedAt === null) return null;
  return { startedAt, minutes, factor, addedMinutes, reopenings, pauses: pausesOf(run, sitting) };
}

export const pausesOf = (run: SectionRun, sitting: Pick<Sitting, "pauses">): readonly Pause[] => [
  ...sitting.pauses,
  ...run.pauses,
];

/** Since when the clock of a run stands, by a pause of its own or of the sitting; null while it goes. */
export const pausedSince = (run: SectionRun, sitting: Pick<Sitting, "pauses">): Date | null =>
  standingSince(pausesOf(run, sitting));

/** What a clock shows. */
export interface ClockFace {
  readonly state: "not-started" | "going" | "standing" | "stopped";
  /** ms. Before the start it is what there will be; once closed, what was left. */
  readonly remaining: number;
  /** ms. */
  readonly elapsed: number;
  /** While a pause lasts, where it would be if the clock went on now; null before the start. */
  readonly deadline: Date | null;
}

/** The clock of a run as a screen shows it, at the server's time. */
export function clockOf(run: SectionRun, sitting: Pick<Sitting, "pauses">, now: Date): ClockFace {
  const timing = timingOf(run, sitting);
  if (timing === null) {
    const start = { ...run, startedAt: now, pauses: [] };
    return { state: "not-started", remaining: remaining(start, now), elapsed: 0, deadline: null };
  }
  const at = run.closedAt ?? now;
  const face = { remaining: remaining(timing, at), elapsed: elapsed(timing, at), deadline: deadline(timing, at) };
  if (!isOpen(run)) return { state: "stopped", ...face };
  return { state: pausedSince(run, sitting) === null ? "going" : "standing", ...face };
}

/** A run closed at a moment, for whichever reason. */
export const closeAt = (run: SectionRun, at: Date, closedBy: "learner" | "clock" | "tutor"): SectionRun => ({
  ...run,
  state: closedBy === "learner" ? "handed-in" : "expired",
  pauses: endPause(run.pauses, at),
  closedAt: at,
  closedBy,
});

/** The run as the clock has it at `now`: closed at its deadline if that has come, whether anybody looked then or not. */
export function withClock(run: SectionRun, sitting: Pick<Sitting, "pauses">, now: Date): SectionRun {
  const timing = timingOf(run, sitting);
  if (timing === null || !isOpen(run)) return run;
  return remaining(timing, now) > 0 ? run : closeAt(run, deadline(timing, now), "clock");
}

/** Whether an edit made at `madeAt` may still come in after the clock stopped at `since`: within the grace, if it was made before. */
export const isLatePacket = (madeAt: Date, since: Date, graceSeconds: number, now: Date): boolean =>
  madeAt <= since && now.getTime() <= since.getTime() + graceSeconds * 1000;

/** Whether a closed run can change no more by a late packet, so that it may be marked. */
export function isSettled(run: SectionRun, { graceSeconds }: Pick<Sitting, "graceSeconds">, now: Date): boolean {
  if (run.state === "handed-in") return true;
  return (
    run.state === "expired" && run.closedAt !== null && now.getTime() > run.closedAt.getTime() + graceSeconds * 1000
  );
}

/** Whether the learner may see marks and what there was to find, as the paper's feedback has it. */
export function mayShowMarks(run: SectionRun, sitting: Sitting, now: Date): boolean {
  if (!isSettled(run, sitting, now)) return false;
  if (sitting.state === "released") return true;
  return sitting.paper.feedback === "at-once" && ["running", "paused", "closed"].includes(sitting.state);
}
