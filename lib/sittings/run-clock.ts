import type { RunRefusal } from "./refusals";
import { closeAt, isOpen, type SectionRun, timingOf } from "./run";
import type { RunEventOf } from "./run-events";
import { whyShut } from "./run-work";
import type { SittingWithRuns } from "./sitting";
import { endPause } from "./stopped-time";
import { remaining } from "./timing";

/** Whether the learner is at another section: one is sat at a time. */
const hasOtherOpen = (run: SectionRun, { runs }: SittingWithRuns): boolean =>
  runs.some((other) => other.id !== run.id && other.userId === run.userId && isOpen(other));

/** Starts the clock. Once started, starting again changes nothing, from whichever window. */
export function start(
  run: SectionRun,
  { windowId }: RunEventOf<"start">,
  within: SittingWithRuns,
  now: Date,
): SectionRun | RunRefusal {
  const shut = whyShut(run);
  if (shut === null) return run;
  if (shut !== "not-started") return shut;
  const { state, wasClosed } = within.sitting;
  if (state === "planned" || state === "open") return "not-begun";
  if (state === "paused") return "sitting-paused";
  if (state !== "running") return "sitting-closed";
  if (wasClosed) return "start-is-over";
  if (hasOtherOpen(run, within)) return "other-section-open";
  return { ...run, state: "running", startedAt: now, liveWindowId: windowId };
}

export function pause(run: SectionRun, now: Date): SectionRun | RunRefusal {
  const shut = whyShut(run);
  if (shut !== null) return shut;
  if (run.state === "paused") return run;
  return { ...run, state: "paused", pauses: [...run.pauses, { from: now, to: null }] };
}

/** Ends the pause of this run; while the whole sitting is paused, the clock stands all the same. */
export function resume(run: SectionRun, now: Date): SectionRun | RunRefusal {
  const shut = whyShut(run);
  if (shut !== null) return shut;
  if (run.state === "running") return run;
  return { ...run, state: "running", pauses: endPause(run.pauses, now) };
}

/** The tutor closes it with its last save; what is closed already stays as it is. */
export function close(run: SectionRun, now: Date): SectionRun | RunRefusal {
  if (run.state === "waiting") return "not-started";
  return isOpen(run) ? closeAt(run, now, "tutor") : run;
}

/** More minutes for a section that is open or still to come. */
export function addTime(
  run: SectionRun,
  { minutes, by, reason }: RunEventOf<"add-time">,
  now: Date,
): SectionRun | RunRefusal {
  const shut = whyShut(run);
  if (shut !== null && run.state !== "waiting") return shut;
  return { ...run, addedMinutes: [...run.addedMinutes, { minutes, at: now, by, reason }] };
}

/** Another factor on the paper's minutes; it counts from the start of the section, as if it had been so all along. */
export function changeFactor(
  run: SectionRun,
  { factor, by, reason }: RunEventOf<"change-factor">,
  { sitting }: SittingWithRuns,
  now: Date,
): SectionRun | RunRefusal {
  const shut = whyShut(run);
  if (shut !== null && run.state !== "waiting") return shut;
  if (run.factor === factor) return run;
  if (run.reopenings.length > 0) return "re-opened";
  const changed = { ...run, factor, factorChanges: [...run.factorChanges, { factor, at: now, by, reason }] };
  const timing = timingOf(changed, sitting);
  return timing !== null && remaining(timing, now) === 0 ? "would-end-at-once" : changed;
}

/**
 * Opens a closed section again with so many minutes from now on. Not once the learner has seen what there was to find; a
 * report that was closed for the questions stays closed.
 */
export function reopen(
  run: SectionRun,
  { minutes, by, reason }: RunEventOf<"re-open">,
  within: SittingWithRuns,
  now: Date,
): SectionRun | RunRefusal {
  const shut = whyShut(run);
  if (shut === null) return "still-open";
  if (run.closedAt === null || run.state === "void") return shut;
  if (run.marksSeenAt !== null) return "marks-seen";
  if (within.sitting.state !== "running" && within.sitting.state !== "paused") return "sitting-closed";
  if (hasOtherOpen(run, within)) return "other-section-open";
  const reopening = { minutes, at: now, by, reason, closedAt: run.closedAt };
  return { ...run, state: "running", closedAt: null, closedBy: null, reopenings: [...run.reopenings, reopening] };
}

/** Makes it count for nothing. What was written stays. */
export function voidRun(run: SectionRun, { by, reason }: RunEventOf<"void">, now: Date): SectionRun {
  if (run.state === "void") return run;
  return {
    ...run,
    state: "void",
    pauses: endPause(run.pauses, now),
    closedAt: run.closedAt ?? now,
    voided: { at: now, by, reason },
  };
}
