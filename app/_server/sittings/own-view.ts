import { allowed, mayShowMarks, type SectionRun, type Sitting, timingOf, whyShut } from "@/lib/sittings";
import type { StoredRun, StoredSitting } from "@/prisma/stores/sittings";
import type { LiveRun, OwnSection, OwnSitting } from "../sitting-views";
import { byClock } from "./change-sitting";
import { clockView } from "./clock-view";
import { sectionOf } from "./new-run";

/** What a learner may know of a sitting now. */
export function ownView(stored: StoredSitting, userId: string, now: Date): OwnSitting {
  const { sitting, runs } = byClock(stored, now);
  const { id, paper, state, plannedAt } = sitting;
  const own = stored.runs.filter(({ run }) => run.userId === userId);
  return {
    id,
    paperId: stored.paperId,
    paperName: paper.name,
    classId: stored.groupId,
    className: stored.groupName,
    state,
    plannedAt,
    wasClosed: sitting.wasClosed,
    voidReason: sitting.voided?.reason ?? null,
    isPaused: state === "paused",
    releasedAt: sitting.releasedAt,
    feedback: paper.feedback,
    // as the paper has them, a parallel piece behind the section that it goes with
    sections: paper.sections.flatMap(({ section }) =>
      own
        .filter((one) => one.run.section === section)
        .sort((a, b) => Number(a.run.isBorderline) - Number(b.run.isBorderline))
        .flatMap((one) => {
          const run = runs.find(({ id: runId }) => runId === one.run.id);
          return run ? [sectionView(one, run, sitting, now)] : [];
        }),
    ),
  };
}

function sectionView(stored: StoredRun, run: SectionRun, sitting: Sitting, now: Date): OwnSection {
  const mayKnowMarks = stored.isMarked && mayShowMarks(run, sitting, now);
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
    factor: run.factor,
    savedAt: run.savedAt,
    closedAt: run.closedAt,
    voidReason: run.voided?.reason ?? null,
    mayKnowMarks,
    mark: mayKnowMarks ? (stored.marks[0] ?? null) : null,
  };
}

/** How far the piece of a run is. */
export function pieceOf({ specimen: { state } }: Pick<StoredRun, "specimen">): OwnSection["piece"] {
  if (state === "failed") return "failed";
  return state === "waiting" || state === "making" ? "making" : "ready";
}

export function liveRunOf(stored: StoredSitting, runId: string, now: Date): LiveRun | null {
  const { sitting, runs } = byClock(stored, now);
  const run = runs.find(({ id }) => id === runId);
  const kept = stored.runs.find((one) => one.run.id === runId);
  if (!run || !kept) return null;
  const clock = clockView(run, sitting, now);
  const timing = timingOf(run, sitting);
  return {
    runId,
    sittingId: sitting.id,
    state: run.state,
    shut: whyShut(run),
    clock,
    allowed: timing && allowed(timing),
    isSittingPaused: sitting.state === "paused",
    isPaused: clock.state === "standing",
    liveWindowId: run.liveWindowId,
    sequence: run.sequence,
    savedAt: run.savedAt,
    closedAt: run.closedAt,
    isReportClosed: run.reportClosedAt !== null,
    mayKnowMarks: kept.isMarked && mayShowMarks(run, sitting, now),
  };
}
