import type { SectionMark } from "@/lib/practice";
import { type Section, shownMark } from "@/lib/results";
import { lastDeadline, type RunState, type SittingState } from "@/lib/sittings";
import { type AuditEntry, listAudit } from "@/prisma/stores/audit";
import { listPeopleNames } from "@/prisma/stores/people";
import { listPresences, readSitting, type StoredRun } from "@/prisma/stores/sittings";
import type { Caller } from "../caller";
import { requireOwnSitting } from "../permissions";
import { refuse } from "../refusal";
import { byClock } from "../sittings/change-sitting";
import { type ClockView, clockView } from "../sittings/clock-view";
import { pieceOf } from "../sittings/own-view";

/** A browser tells every few seconds that it is there; for so long after the last time it counts as there, ms. */
const PRESENT_FOR_MS = 30_000;

export interface BoardRun {
  readonly runId: string;
  readonly practiceId: string;
  readonly section: Section;
  readonly isBorderline: boolean;
  readonly state: RunState;
  readonly clock: ClockView;
  readonly piece: "making" | "ready" | "failed";
  readonly startedAt: Date | null;
  readonly savedAt: Date | null;
  readonly closedAt: Date | null;
  readonly closedBy: "learner" | "clock" | "tutor" | null;
  /** Minutes that tutors gave on top, all together. */
  readonly addedMinutes: number;
  readonly isReopened: boolean;
  readonly voidReason: string | null;
  /** Shown mark and verdict, once it is marked. */
  readonly mark: { readonly shown: number; readonly isPassed: boolean } | null;
  /** Whether the learner has seen what there was to find. */
  readonly hasSeenMarks: boolean;
}

export interface BoardLearner {
  readonly userId: string;
  readonly name: string;
  readonly isIn: boolean;
  readonly enteredAt: Date | null;
  readonly factor: number;
  readonly runs: readonly BoardRun[];
}

export interface Board {
  readonly sitting: {
    readonly id: string;
    readonly state: SittingState;
    readonly paperName: string;
    readonly classId: string;
    readonly className: string;
    readonly plannedAt: Date;
    readonly openedAt: Date | null;
    readonly begunAt: Date | null;
    readonly closedAt: Date | null;
    readonly releasedAt: Date | null;
    readonly voidReason: string | null;
    /** When the sitting is over for everybody, as far as is known; null while that moves with a pause. */
    readonly endsAt: Date | null;
  };
  readonly pieces: { readonly all: number; readonly ready: number; readonly failed: number };
  readonly learners: readonly BoardLearner[];
  /** What tutors did, the earliest first. */
  readonly log: readonly (AuditEntry & { readonly actorName: string })[];
}

/** The board of a sitting for the tutors of its class. Says the same again until something changes. */
export async function readBoard(caller: Caller, id: string) {
  const own = await requireOwnSitting(caller, id);
  if (!own.ok) return own;
  const stored = await readSitting(id);
  if (!stored) return refuse("no-such-sitting");
  const now = caller.clock();
  const { sitting, runs } = byClock(stored, now);
  const [presences, log] = await Promise.all([listPresences(id), listAudit([id, ...runs.map((run) => run.id)])]);
  const names = await listPeopleNames([...new Set(log.map(({ actorId }) => actorId))]);
  const pieces = new Map(stored.runs.map((one) => [one.specimenId, pieceOf(one)]));
  const learners = [...new Set(runs.map(({ userId }) => userId))].map((userId): BoardLearner => {
    const own = stored.runs.filter(({ run }) => run.userId === userId);
    const presence = presences.find((one) => one.userId === userId);
    return {
      userId,
      name: own[0].learnerName,
      isIn: presence !== undefined && now.getTime() - presence.lastSeenAt.getTime() <= PRESENT_FOR_MS,
      enteredAt: presence?.enteredAt ?? null,
      factor: Math.max(...runs.filter((run) => run.userId === userId).map(({ factor }) => factor)),
      runs: own.flatMap((one) => {
        const run = runs.find(({ id: runId }) => runId === one.run.id);
        return run ? [boardRun({ ...one, run }, clockView(run, sitting, now))] : [];
      }),
    };
  });
  const { state, paper, plannedAt, openedAt, begunAt, closedAt, releasedAt, voided } = sitting;
  const board: Board = {
    sitting: {
      id,
      state,
      paperName: paper.name,
      classId: stored.groupId,
      className: stored.groupName,
      plannedAt,
      openedAt,
      begunAt,
      closedAt,
      releasedAt,
      voidReason: voided?.reason ?? null,
      endsAt:
        state === "running" && runs.every((run) => run.state !== "paused")
          ? lastDeadline({ sitting, runs }, now)
          : null,
    },
    pieces: {
      all: pieces.size,
      ready: [...pieces.values()].filter((piece) => piece === "ready").length,
      failed: [...pieces.values()].filter((piece) => piece === "failed").length,
    },
    learners,
    log: log.map((entry) => ({ ...entry, actorName: names.get(entry.actorId) ?? "" })),
  };
  return { ok: true, now, board } as const;
}

function boardRun({ run, practiceId, marks, ...stored }: StoredRun, clock: ClockView): BoardRun {
  const { section, isBorderline, state, startedAt, savedAt, closedAt, closedBy } = run;
  return {
    runId: run.id,
    practiceId,
    section,
    isBorderline,
    state,
    clock,
    piece: pieceOf(stored),
    startedAt,
    savedAt,
    closedAt,
    closedBy,
    addedMinutes: run.addedMinutes.reduce((sum, { minutes }) => sum + minutes, 0),
    isReopened: run.reopenings.length > 0,
    voidReason: run.voided?.reason ?? null,
    mark: markOf(marks),
    hasSeenMarks: run.marksSeenAt !== null,
  };
}

function markOf([mark]: readonly SectionMark[]): BoardRun["mark"] {
  return mark ? { shown: shownMark(mark.markThousandths), isPassed: mark.isPassed } : null;
}
