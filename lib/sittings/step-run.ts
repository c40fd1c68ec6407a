import type { RunRefusal } from "./refusals";
import { type SectionRun, withClock } from "./run";
import { addTime, changeFactor, close, pause, reopen, resume, start, voidRun } from "./run-clock";
import type { RunEvent } from "./run-events";
import { closeReport, handIn, seeMarks, takeOver, takeSave } from "./run-work";
import type { SittingWithRuns } from "./sitting";
import { type Step, stepTo } from "./step";

/**
 * What an event makes of a run. The clock comes first: a run whose deadline has passed is closed before the event is
 * looked at, so that it makes no difference when somebody looked. `within` is the sitting, as `stepSitting` with a tick
 * left it, with the runs of the same learner at least. Less extra time or a void run may bring the sitting's last deadline
 * nearer: tick the sitting after them as well.
 */
export function stepRun(
  run: SectionRun,
  event: RunEvent,
  within: SittingWithRuns,
  now: Date,
): Step<SectionRun, RunRefusal> {
  const byClock = withClock(run, within.sitting, now);
  return stepTo<SectionRun, RunRefusal>(run, byClock, answer(byClock, event, within, now));
}

function answer(run: SectionRun, event: RunEvent, within: SittingWithRuns, now: Date): SectionRun | RunRefusal {
  switch (event.kind) {
    case "tick":
      return run;
    case "start":
      return start(run, event, within, now);
    case "take-over":
      return takeOver(run, event);
    case "save":
      return takeSave(run, event, within.sitting, now);
    case "close-report":
      return closeReport(run, event, within.sitting, now);
    case "hand-in":
      return handIn(run, event, within.sitting, now);
    case "see-marks":
      return seeMarks(run, within.sitting, now);
    case "pause":
      return pause(run, now);
    case "resume":
      return resume(run, now);
    case "close":
      return close(run, now);
    case "add-time":
      return addTime(run, event, now);
    case "change-factor":
      return changeFactor(run, event, within, now);
    case "re-open":
      return reopen(run, event, within, now);
    case "void":
      return voidRun(run, event, now);
  }
}
