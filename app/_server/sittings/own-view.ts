import type { Section } from "@/lib/results";
import { mayShowMarks, type RunState, type SectionRun, type Sitting, type SittingState, whyShut } from "@/lib/sittings";
import type { StoredRun, StoredSitting } from "@/prisma/stores/sittings";
import { byClock } from "./change-sitting";
import { type ClockView, clockView } from "./clock-view";
import { sectionOf } from "./new-run";

/** One of a learner's sections in a sitting, as they may know it. */
export interface OwnSection {
  readonly runId: string;
  readonly practiceId: string;
  readonly section: Section;
  readonly isBorderline: boolean;
  readonly state: RunState;
  readonly closedBy: SectionRun["closedBy"];
  readonly clock: ClockView;
  readonly piece: "making" | "ready" | "failed";
  /** What is being done to the piece; empty when nothing is. */
  readonly stage: string;
  readonly passMark: number;
  readonly savedAt: Date | null;
  /** Whether the mark sheet may be opened. */
  readonly mayKnowMarks: boolean;
}

/** A sitting as one learner may know it. */
export interface OwnSitting {
  readonly id: string;
  readonly paperName: string;
  readonly className: string;
  readonly state: SittingState;
  readonly plannedAt: Date;
  readonly isPaused: boolean;
  readonly feedback: Sitting["paper"]["feedback"];
  readonly sections: readonly OwnSection[];
}

/** What a learner may know of a sitting now. */
export function ownView(stored: StoredSitting, userId: string, now: Date): OwnSitting {
  const { sitting, runs } = byClock(stored, now);
  const { id, paper, state, plannedAt } = sitting;
  const own = stored.runs.filter(({ run }) => run.userId === userId);
  return {
    id,
    paperName: paper.name,
    className: stored.groupName,
    state,
    plannedAt,
    isPaused: state === "paused",
    feedback: paper.feedback,
    sections: own.flatMap((one) => {
      const run = runs.find(({ id: runId }) => runId === one.run.id);
      return run ? [sectionView(one, run, sitting, now)] : [];
    }),
  };
}

function sectionView(stored: StoredRun, run: SectionRun, sitting: Sitting, now: Date): OwnSection {
  return {
    runId: run.id,
    practiceId: stored.practiceId,
    section: run.section,
    isBorderline: run.isBorderline,
    state: run.state,
    closedBy: run.closedBy,
    clock: clockView(run, sitting, now),
    piece: pieceOf(stored),
    stage: stored.specimen.stage,
    passMark: sectionOf(sitting.paper, run.section).passMark,
    savedAt: run.savedAt,
    mayKnowMarks: stored.isMarked && mayShowMarks(run, sitting, now),
  };
}

/** How far the piece of a run is. */
export function pieceOf({ specimen: { state } }: Pick<StoredRun, "specimen">): OwnSection["piece"] {
  if (state === "failed") return "failed";
  return state === "waiting" || state === "making" ? "making" : "ready";
}

/** A run on the bench, as its window follows it. */
export interface LiveRun {
  readonly runId: string;
  readonly sittingId: string;
  readonly state: RunState;
  /** Why it takes nothing, as a code of the refusals; null while the learner is at it. */
  readonly shut: ReturnType<typeof whyShut>;
  readonly clock: ClockView;
  readonly isSittingPaused: boolean;
  /** Whether the whole sitting or this section alone is paused. */
  readonly isPaused: boolean;
  /** The window that may write; another one is read-only. */
  readonly liveWindowId: string | null;
  readonly sequence: number;
  readonly savedAt: Date | null;
  readonly isReportClosed: boolean;
  readonly mayKnowMarks: boolean;
}

export function liveRunOf(stored: StoredSitting, runId: string, now: Date): LiveRun | null {
  const { sitting, runs } = byClock(stored, now);
  const run = runs.find(({ id }) => id === runId);
  const kept = stored.runs.find((one) => one.run.id === runId);
  if (!run || !kept) return null;
  const clock = clockView(run, sitting, now);
  return {
    runId,
    sittingId: sitting.id,
    state: run.state,
    shut: whyShut(run),
    clock,
    isSittingPaused: sitting.state === "paused",
    isPaused: clock.state === "standing",
    liveWindowId: run.liveWindowId,
    sequence: run.sequence,
    savedAt: run.savedAt,
    isReportClosed: run.reportClosedAt !== null,
    mayKnowMarks: kept.isMarked && mayShowMarks(run, sitting, now),
  };
}
