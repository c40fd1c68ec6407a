import { answerSave } from "../practice";
import type { RunRefusal } from "./refusals";
import { closeAt, isLatePacket, mayShowMarks, pausedSince, type SectionRun } from "./run";
import type { RunEventOf } from "./run-events";
import type { Sitting } from "./sitting";

/** Why a run takes nothing; null while the learner is at it. */
export function whyShut(run: SectionRun): RunRefusal | null {
  switch (run.state) {
    case "waiting":
      return "not-started";
    case "expired":
      return run.closedBy === "tutor" ? "closed-by-tutor" : "time-is-up";
    case "handed-in":
    case "void":
      return run.state;
    case "running":
    case "paused":
      return null;
  }
}

/** Why the learner's work of `madeAt` is not taken from that window at `now`; null where it is. */
function whyNotTaken(
  run: SectionRun,
  sitting: Sitting,
  { windowId, madeAt }: { readonly windowId: string; readonly madeAt: Date },
  now: Date,
): RunRefusal | null {
  const isLate = (since: Date) => isLatePacket(madeAt, since, sitting.graceSeconds, now);
  const shut = whyShut(run);
  if (shut !== null) {
    if (run.state !== "expired" || run.closedAt === null || !isLate(run.closedAt)) return shut;
  } else {
    const since = pausedSince(run, sitting);
    if (since !== null && !isLate(since)) return "paused";
  }
  return run.liveWindowId === windowId ? null : "other-window";
}

/**
 * A save: in the order of its number, from the live window, in time. The same once more changes nothing. Once the report is
 * closed only its answers may change.
 */
export function takeSave(
  run: SectionRun,
  { sequence, window, madeAt, report }: RunEventOf<"save">,
  sitting: Sitting,
  now: Date,
): SectionRun | RunRefusal {
  const refusal = whyNotTaken(run, sitting, { windowId: window.id, madeAt }, now);
  if (refusal !== null) return refusal;
  const answer = answerSave({ ...run, state: "open" }, sequence, report, window);
  switch (answer) {
    case "accept":
      return { ...run, report, sequence, windowId: window.id, savedAt: now };
    case "repeat":
      return run;
    case "report-open":
    case "report-closed":
      return answer;
    default:
      return "stale-save";
  }
}

/** Closes the report, for good: the questions that follow speak of what is on the piece. */
export function closeReport(
  run: SectionRun,
  event: RunEventOf<"close-report">,
  sitting: Sitting,
  now: Date,
): SectionRun | RunRefusal {
  const refusal = whyNotTaken(run, sitting, event, now);
  if (refusal !== null) return refusal;
  return run.reportClosedAt === null ? { ...run, reportClosedAt: now } : run;
}

/** Hands in, for good. A packet that was under way when the clock ran out still counts as handed in, at the deadline. */
export function handIn(
  run: SectionRun,
  event: RunEventOf<"hand-in">,
  sitting: Sitting,
  now: Date,
): SectionRun | RunRefusal {
  if (run.state === "handed-in") return run;
  return whyNotTaken(run, sitting, event, now) ?? closeAt(run, run.closedAt ?? now, "learner");
}

/** Makes a window the one that writes. */
export function takeOver(run: SectionRun, { windowId }: RunEventOf<"take-over">): SectionRun | RunRefusal {
  const shut = whyShut(run);
  if (shut !== null) return shut;
  return run.liveWindowId === windowId ? run : { ...run, liveWindowId: windowId };
}

/** Notes that the learner sees the marks, after which the section cannot be opened again. */
export function seeMarks(run: SectionRun, sitting: Sitting, now: Date): SectionRun | RunRefusal {
  if (run.state === "void") return "void";
  if (!mayShowMarks(run, sitting, now)) return "marks-not-released";
  return run.marksSeenAt === null ? { ...run, marksSeenAt: now } : run;
}
