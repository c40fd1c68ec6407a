import { countingMark, type SectionMark } from "@/lib/practice";
import { shownMark } from "@/lib/results";
import { type Course, courseOf, courseRule, lastDeadline, nextFor, type Paper } from "@/lib/sittings";
import { listAudit } from "@/prisma/stores/audit";
import { listPeopleNames } from "@/prisma/stores/people";
import { listPresences } from "@/prisma/stores/presences";
import { readSitting, type StoredRun } from "@/prisma/stores/sittings";
import { countWritten, type Written } from "@/prisma/stores/written";
import type { Caller } from "../caller";
import { requireOwnSitting } from "../permissions";
import { refuse } from "../refusal";
import type { Board, BoardLearner, BoardRun, ClockView } from "../sitting-views";
import { byClock } from "../sittings/change-sitting";
import { clockView } from "../sittings/clock-view";
import { coursesOfClassAgain } from "../sittings/courses-of-class";
import { busyWith } from "../sittings/due-in-class";
import { pieceOf } from "../sittings/own-view";

/** A browser tells every few seconds that it is there; for so long after the last time it counts as there, ms. */
const PRESENT_FOR_MS = 30_000;

/** The board of a sitting for the tutors of its class. Says the same again until something changes. */
export async function readBoard(caller: Caller, id: string) {
  const own = await requireOwnSitting(caller, id);
  if (!own.ok) return own;
  const stored = await readSitting(id);
  if (!stored) return refuse("no-such-sitting");
  const now = caller.clock();
  const { sitting, runs } = byClock(stored, now);
  const isOver = sitting.state === "closed" || sitting.state === "released";
  const rule = courseRule(sitting.paper);
  const [presences, log, written, over] = await Promise.all([
    listPresences(id),
    listAudit([id, ...runs.map((run) => run.id)]),
    countWritten(id),
    isOver ? coursesOfClassAgain(stored.groupId, stored.paperId, rule) : null,
  ]);
  const courses = over?.courses ?? null;
  const names = await listPeopleNames([...new Set(log.map(({ actorId }) => actorId))]);
  const pieces = new Map(stored.runs.map((one) => [one.specimenId, pieceOf(one)]));
  const learners = [...new Set(runs.map(({ userId }) => userId))].map((userId): BoardLearner => {
    const own = inOrder(
      stored.runs.filter(({ run }) => run.userId === userId),
      sitting.paper,
    );
    const course = courses && (courses.get(userId) ?? courseOf([], rule));
    const presence = presences.find((one) => one.userId === userId);
    return {
      userId,
      name: own[0].learnerName,
      isIn: presence !== undefined && now.getTime() - presence.lastSeenAt.getTime() <= PRESENT_FOR_MS,
      enteredAt: presence?.enteredAt ?? null,
      factor: Math.max(...runs.filter((run) => run.userId === userId).map(({ factor }) => factor)),
      runs: own.flatMap((one) => {
        const run = runs.find(({ id: runId }) => runId === one.run.id);
        if (!run) return [];
        return [boardRun({ ...one, run }, clockView(run, sitting, now), written.get(one.practiceId), course)];
      }),
      standing: course && standingIn(course),
    };
  });
  const { state, paper, plannedAt, openedAt, begunAt, closedAt, releasedAt, voided } = sitting;
  const board: Board = {
    sitting: {
      id,
      state,
      paperId: stored.paperId,
      paperName: paper.name,
      classId: stored.groupId,
      className: stored.groupName,
      plannedAt,
      openedAt,
      begunAt,
      closedAt,
      releasedAt,
      voidReason: voided?.reason ?? null,
      resits: over && resitsOf(learners, busyWith(over.sittings)),
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
    erased: stored.erased,
    log: log.map(({ actorId, ...entry }) => ({ ...entry, actorName: names.get(actorId) ?? "" })),
  };
  return { ok: true, now, board } as const;
}

/** A learner's sections as the paper lists them, each before its parallel piece. */
const inOrder = (runs: readonly StoredRun[], { sections }: Paper): readonly StoredRun[] =>
  runs.toSorted(
    (a, b) =>
      sections.findIndex(({ section }) => section === a.run.section) -
        sections.findIndex(({ section }) => section === b.run.section) ||
      Number(a.run.isBorderline) - Number(b.run.isBorderline),
  );

function standingIn(course: Course): BoardLearner["standing"] {
  const { isPassed, round, due } = nextFor(course);
  return { isPassed, round, due };
}

/** Whoever sat something and has yet to pass is due again, unless a sitting of the paper is planned or on for them. */
function resitsOf(learners: readonly BoardLearner[], busy: ReadonlySet<string>): Board["sitting"]["resits"] {
  const due = learners.filter(({ standing, runs }) => standing?.isPassed === false && runs.some(({ mark }) => mark));
  if (due.length === 0) return "none";
  return due.every(({ userId }) => busy.has(userId)) ? "planned" : "due";
}

const NOTHING_WRITTEN: Written = { indications: 0, answers: 0 };

function boardRun(
  { run, practiceId, marks, ...stored }: StoredRun,
  clock: ClockView,
  written: Written | undefined,
  course: Course | null,
): BoardRun {
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
    written: written ?? NOTHING_WRITTEN,
    mark: markOf(marks),
    placed: course && placeIn(course, run.id),
    hasSeenMarks: run.marksSeenAt !== null,
  };
}

function markOf([mark]: readonly SectionMark[]): BoardRun["mark"] {
  if (!mark) return null;
  const { markThousandths, isPassed, passMark, reviewed } = mark;
  const counting = countingMark(mark);
  return {
    shown: shownMark(counting.markThousandths),
    isPassed: counting.isPassed,
    passMark,
    computed: reviewed ? { shown: shownMark(markThousandths), isPassed } : null,
    reviewedAt: reviewed?.at ?? null,
  };
}

function placeIn({ attempts }: Course, runId: string): BoardRun["placed"] {
  const found = attempts.find(({ attempt }) => attempt.id === runId);
  return found ? { kind: found.kind, decidedOn: found.decidedOn, outcome: found.outcome } : null;
}
