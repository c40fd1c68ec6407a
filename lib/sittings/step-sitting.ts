import { lastDeadline } from "./last-deadline";
import type { SittingRefusal } from "./refusals";
import { isOpen, isSettled, type SectionRun, withClock } from "./run";
import type { RunEventOf } from "./run-events";
import type { Sitting, SittingState, SittingWithRuns } from "./sitting";
import { type Step, stepTo } from "./step";
import { stepRun } from "./step-run";
import { endPause } from "./stopped-time";

/** What happens to a sitting as a whole. */
export type SittingEvent =
  | { readonly kind: "open" }
  | { readonly kind: "begin" }
  | { readonly kind: "pause" }
  | { readonly kind: "resume" }
  | { readonly kind: "close" }
  | { readonly kind: "release" }
  | { readonly kind: "tick" }
  | { readonly kind: "plan"; readonly plannedAt: Date }
  | { readonly kind: "add-run"; readonly run: SectionRun }
  | (RunEventOf<"re-open"> & { readonly runId: string })
  | RunEventOf<"void">;

/**
 * What an event makes of a sitting and its runs. The clock comes first: runs whose deadline has passed are closed, and so is
 * the sitting once the last deadline of the paper has passed. Everybody being done closes nothing; the tutor does.
 */
export function stepSitting(
  whole: SittingWithRuns,
  event: SittingEvent,
  now: Date,
): Step<SittingWithRuns, SittingRefusal> {
  const byClock = wholeByClock(whole, now);
  return stepTo<SittingWithRuns, SittingRefusal>(whole, byClock, answer(byClock, event, now));
}

function wholeByClock(whole: SittingWithRuns, now: Date): SittingWithRuns {
  const runs = whole.runs.map((run) => withClock(run, whole.sitting, now));
  const timed = runs.some((run, n) => run !== whole.runs[n]) ? { ...whole, runs } : whole;
  const end = timed.sitting.state === "running" ? lastDeadline(timed, now) : null;
  return end !== null && end.getTime() + waitAfterEnd(timed.sitting) <= now.getTime() ? closed(timed, end) : timed;
}

/** Marks come once late packets are in; whoever ends last is to be offered a parallel piece by them too. */
const OFFER_MS = 5000;

/** How long a sitting whose time is over stays as it is, ms. */
const waitAfterEnd = ({ wasClosed, paper, graceSeconds }: Sitting): number =>
  paper.borderlinePiece && !wasClosed ? 1000 * graceSeconds + OFFER_MS : 0;

/** Whatever is asked of a sitting in one of these states is refused for that reason, unless it is so already. */
const WHY_OVER: Partial<Readonly<Record<SittingState, SittingRefusal>>> = {
  closed: "is-closed",
  released: "is-released",
  void: "is-void",
};

function answer(whole: SittingWithRuns, event: SittingEvent, now: Date): SittingWithRuns | SittingRefusal {
  const { sitting } = whole;
  const { state } = sitting;
  const become = (changes: Partial<Sitting>): SittingWithRuns => ({ ...whole, sitting: { ...sitting, ...changes } });
  const over = WHY_OVER[state];
  switch (event.kind) {
    case "tick":
      return whole;
    case "void":
      return state === "void" ? whole : voided(whole, event, now);
    case "release":
      return release(whole, now);
    case "close":
      if (state === "closed") return whole;
      if (state === "running" || state === "paused") return closed(whole, now);
      return over ?? "not-yet-begun";
    case "re-open":
      return reopenRun(whole, event, now);
    case "add-run":
      return over ?? addRun(whole, event.run);
    case "plan":
      // whoever was in waits for the new time like everybody else
      if (state === "planned" || state === "open") {
        return become({ state: "planned", plannedAt: event.plannedAt, openedAt: null });
      }
      return over ?? "already-begun";
    case "open":
      if (state === "open") return whole;
      if (state === "planned") return become({ state: "open", openedAt: now });
      return over ?? "already-begun";
    case "begin":
      if (state === "running") return whole;
      if (state === "open") return become({ state: "running", begunAt: now });
      if (state === "planned") return "not-open";
      return over ?? "is-paused";
    case "pause":
      if (state === "paused") return whole;
      if (state === "running") return become({ state: "paused", pauses: [...sitting.pauses, { from: now, to: null }] });
      return over ?? "not-yet-begun";
    case "resume":
      if (state === "running") return whole;
      if (state === "paused") return become({ state: "running", pauses: endPause(sitting.pauses, now) });
      return over ?? "not-yet-begun";
  }
}

/** Closes every run that is open with its last save; what was never started stays so, and was not sat. */
function closed({ sitting, runs }: SittingWithRuns, at: Date): SittingWithRuns {
  const within = { sitting, runs };
  return {
    sitting: { ...sitting, state: "closed", closedAt: at, wasClosed: true, pauses: endPause(sitting.pauses, at) },
    runs: runs.map((run) => (isOpen(run) ? stepRun(run, { kind: "close" }, within, at).next : run)),
  };
}

function voided({ sitting, runs }: SittingWithRuns, event: RunEventOf<"void">, now: Date): SittingWithRuns {
  const { by, reason } = event;
  const within = { sitting, runs };
  return {
    sitting: {
      ...sitting,
      state: "void",
      closedAt: sitting.closedAt ?? now,
      pauses: endPause(sitting.pauses, now),
      voided: { at: now, by, reason },
    },
    runs: runs.map((run) => stepRun(run, event, within, now).next),
  };
}

/** Releases the marks, for good. */
function release(whole: SittingWithRuns, now: Date): SittingWithRuns | SittingRefusal {
  const { sitting, runs } = whole;
  if (sitting.state === "released") return whole;
  if (sitting.state === "void") return "is-void";
  if (sitting.state !== "closed") return "not-closed";
  const isSure = runs.every((run) => run.state !== "expired" || isSettled(run, sitting, now));
  return isSure ? { ...whole, sitting: { ...sitting, state: "released", releasedAt: now } } : "not-settled";
}

/** Opens one run again; a closed sitting runs again with it, for that run alone. */
function reopenRun(
  { sitting, runs }: SittingWithRuns,
  { runId, ...event }: RunEventOf<"re-open"> & { readonly runId: string },
  now: Date,
): SittingWithRuns | SittingRefusal {
  if (sitting.state === "released") return "is-released";
  if (sitting.state === "void") return "is-void";
  const run = runs.find(({ id }) => id === runId);
  if (!run) return "no-such-run";
  if (sitting.begunAt === null) return "not-yet-begun";
  const going: Sitting = sitting.state === "closed" ? { ...sitting, state: "running", closedAt: null } : sitting;
  const step = stepRun(run, event, { sitting: going, runs }, now);
  if (!step.ok) return step.code;
  return { sitting: going, runs: runs.map((one) => (one.id === runId ? step.next : one)) };
}

/** Takes a learner's section in, until the sitting has been closed once: once each, and once as a parallel piece. */
function addRun(whole: SittingWithRuns, run: SectionRun): SittingWithRuns | SittingRefusal {
  const { sitting, runs } = whole;
  if (sitting.wasClosed) return "start-is-over";
  if (!sitting.paper.sections.some(({ section }) => section === run.section)) return "not-in-paper";
  const isTaken = runs.some(
    (other) =>
      other.id === run.id ||
      (other.userId === run.userId &&
        other.section === run.section &&
        other.isBorderline === run.isBorderline &&
        other.state !== "void"),
  );
  return isTaken ? "already-in" : { ...whole, runs: [...runs, run] };
}
