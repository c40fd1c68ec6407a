import type { Book, SectionMark } from "@/lib/practice";
import { OBSERVATION_VERSION } from "@/lib/progress";
import type { Question } from "@/lib/questions";
import { EMPTY_REPORT } from "@/lib/report";
import type { Section } from "@/lib/results";
import { isOpen, type RunState, type SectionRun, type Sitting, type SittingWithRuns } from "@/lib/sittings";
import { database, PATIENCE } from "../client";
import { paperColumn, questionsColumn, reportColumn } from "../columns";
import { type ErasedLearner, readErased } from "../erased-column";
import { Prisma } from "../generated/client/client";
import type { SectionRunModel } from "../generated/client/models";
import { observationsColumn } from "../progress-columns";
import { runCourseColumn, sittingCourseColumn } from "../run-columns";
import { type CountedSection, countSections, forgetTallies } from "../tallies";
import { queueCounted, queueTakenBack } from "../xapi-outbox";
import { type AuditEntry, auditRow } from "./audit";
import { readHeldSitting } from "./demo-history";
import { marksOf, type PracticeToCreate, practiceRow } from "./practices";
import type { SpecimenProgress } from "./specimens";

/** A run as it is stored, with what its practice says of piece and marks. */
export interface StoredRun {
  readonly run: SectionRun;
  readonly learnerName: string;
  readonly revision: number;
  readonly practiceId: string;
  readonly book: Book;
  readonly specimenId: string;
  readonly specimen: SpecimenProgress;
  /** Whether its marks are stored. */
  readonly isMarked: boolean;
  /** One, once it is marked. */
  readonly marks: readonly SectionMark[];
}

export interface StoredSitting {
  readonly sitting: Sitting;
  readonly revision: number;
  readonly groupId: string;
  readonly groupName: string;
  readonly paperId: string;
  readonly paperVersionId: string;
  readonly isForWholeClass: boolean;
  /** Learners who were erased since it began. */
  readonly erased: readonly ErasedLearner[];
  readonly runs: readonly StoredRun[];
}

const withAll = {
  group: { select: { name: true } },
  paperVersion: { select: { paperId: true, content: true } },
  runs: {
    orderBy: [{ user: { name: "asc" as const } }, { userId: "asc" as const }, { id: "asc" as const }],
    include: {
      user: { select: { name: true } },
      practice: {
        select: {
          id: true,
          state: true,
          book: true,
          sequence: true,
          windowId: true,
          savedAt: true,
          reportClosedAt: true,
          specimenId: true,
          specimen: { select: { state: true, stage: true } },
          attempts: { omit: { result: true } },
        },
      },
    },
  },
} satisfies Prisma.SittingInclude;
type SittingRow = Prisma.SittingGetPayload<{ include: typeof withAll }>;

/** A sitting with all its runs. Their reports are left empty, but for the run that is asked for. */
export async function readSitting(id: string, withReportOf?: string): Promise<StoredSitting | null> {
  const row = await database().sitting.findUnique({ where: { id }, include: withAll });
  if (!row) return null;
  const stored = storedOf(row);
  const asked = stored.runs.find(({ run }) => run.id === withReportOf);
  if (!asked) return stored;
  const { report, ...saved } = await database().practice.findUniqueOrThrow({
    where: { id: asked.practiceId },
    select: { report: true, sequence: true, windowId: true, savedAt: true, reportClosedAt: true },
  });
  // the rest of the run is guarded by its revision, which every save raises
  const run: SectionRun = { ...asked.run, report: reportColumn.read(report), ...saved };
  return { ...stored, runs: stored.runs.map((one) => (one === asked ? { ...one, run } : one)) };
}

/** Sittings of a class, of one paper if one is given: the latest planned first. */
export async function listSittingsOf(groupId: string, paperId?: string): Promise<readonly StoredSitting[]> {
  const rows = await database().sitting.findMany({
    where: { groupId, ...(paperId && { paperVersion: { paperId } }) },
    orderBy: [{ plannedAt: "desc" }, { id: "asc" }],
    include: withAll,
  });
  return rows.map(storedOf);
}

/**
 * What changes whenever something changes that a course of a paper in a class is worked out from: revisions and marks. Far
 * cheaper to read than the sittings.
 */
export async function readCourseTrace(groupId: string, paperId: string): Promise<string> {
  const rows = await database().sitting.findMany({
    where: { groupId, paperVersion: { paperId } },
    orderBy: { id: "asc" },
    select: {
      id: true,
      revision: true,
      runs: {
        orderBy: { id: "asc" },
        select: {
          id: true,
          revision: true,
          practice: {
            select: { state: true, attempts: { orderBy: { id: "asc" }, omit: { result: true } } },
          },
        },
      },
    },
  });
  return JSON.stringify(rows);
}

/** The classes in whose sittings a learner has a section. */
export async function listClassesSatIn(userId: string): Promise<readonly string[]> {
  const rows = await database().sitting.findMany({
    where: { runs: { some: { userId } } },
    distinct: "groupId",
    select: { groupId: true },
  });
  return rows.map(({ groupId }) => groupId);
}

/** Sittings that a learner has a section in, or may come to with their class: the latest planned first. */
export async function listSittingsFor(userId: string): Promise<readonly StoredSitting[]> {
  const isMember = { members: { some: { userId, leftAt: null } } };
  const rows = await database().sitting.findMany({
    where: {
      OR: [
        { runs: { some: { userId } } },
        { isForWholeClass: true, state: { in: ["planned", "open", "running", "paused"] }, group: isMember },
      ],
    },
    orderBy: [{ plannedAt: "desc" }, { id: "asc" }],
    include: withAll,
  });
  return rows.map(storedOf);
}

/**
 * Sittings that the clock can change, and those with sections that are closed and not marked; not the one that the demo's past
 * is being written in, whose clock is another.
 */
export async function listSittingsToSweep(): Promise<readonly string[]> {
  const rows = await database().sitting.findMany({
    where: {
      OR: [
        { state: { in: ["running", "paused"] } },
        { runs: { some: { state: { in: ["handedIn", "expired"] }, practice: { state: "open" } } } },
      ],
    },
    select: { id: true },
  });
  // only now: it is held before it begins
  const held = await readHeldSitting();
  return rows.flatMap(({ id }) => (id === held ? [] : [id]));
}

/** A section that was started and is not closed, as far as is stored. */
export interface StandingRun {
  readonly id: string;
  readonly sittingId: string;
}

/** Sections of a learner that were started and are not closed, as far as is stored. */
export const listStandingRuns = (userId: string): Promise<readonly StandingRun[]> => standingRuns(database(), userId);

const standingRuns = (db: Prisma.TransactionClient, userId: string): Promise<readonly StandingRun[]> =>
  db.sectionRun.findMany({
    where: { userId, state: { in: ["running", "paused"] } },
    orderBy: { id: "asc" },
    select: { id: true, sittingId: true },
  });

/** Where a run belongs. */
export async function readRunPlace(
  id: string,
): Promise<{ readonly sittingId: string; readonly userId: string } | null> {
  return database().sectionRun.findUnique({ where: { id }, select: { sittingId: true, userId: true } });
}

/** The class of a sitting. */
export async function readGroupOfSitting(id: string): Promise<string | null> {
  const row = await database().sitting.findUnique({ where: { id }, select: { groupId: true } });
  return row?.groupId ?? null;
}

export interface SittingToCreate {
  readonly sitting: Sitting;
  readonly groupId: string;
  readonly paperVersionId: string;
  readonly isForWholeClass: boolean;
  readonly createdAt: Date;
  readonly runs: readonly NewRun[];
  readonly audit: AuditEntry;
}

/** An open sitting that begins within so long keeps the machine for those in it. */
const SOON_MS = 2 * 3_600_000;

/** Whether somebody has sections to sit or under way in a sitting that goes on or soon begins. */
export async function isInSitting(userId: string, now: Date): Promise<boolean> {
  const soon = new Date(now.getTime() + SOON_MS);
  const run = await database().sectionRun.findFirst({
    where: {
      userId,
      state: { in: ["waiting", "running", "paused"] },
      sitting: { OR: [{ state: { in: ["running", "paused"] } }, { state: "open", plannedAt: { lte: soon } }] },
    },
    select: { id: true },
  });
  return run !== null;
}

/** A run that is new, with the practice that goes with it. */
export interface NewRun {
  readonly run: SectionRun;
  readonly practice: PracticeToCreate;
}

/** Stores a sitting with the runs of everybody expected, all or nothing. */
export async function createSitting({ sitting, runs, audit, ...columns }: SittingToCreate): Promise<void> {
  const { id, state, plannedAt } = sitting;
  await database().$transaction([
    database().sitting.create({
      data: { id, state, plannedAt, course: sittingCourseColumn.write(courseOf(sitting)), ...columns },
    }),
    ...createRuns(id, runs),
    database().auditEntry.createMany({ data: [auditRow(audit)] }),
  ]);
}

const createRuns = (sittingId: string, runs: readonly NewRun[]) => [
  database().practice.createMany({ data: runs.map(({ practice }) => practiceRow(practice)) }),
  database().sectionRun.createMany({
    data: runs.map(({ run, practice }) => {
      const { id, userId, section, isBorderline } = run;
      return { id, sittingId, userId, section, isBorderline, practiceId: practice.id, ...runColumns(run) };
    }),
  }),
];

export interface SittingChange {
  readonly before: StoredSitting;
  readonly next: SittingWithRuns;
  /** Practices of the runs that are new. */
  readonly newRuns: readonly NewRun[];
  readonly audit: AuditEntry | null;
  /** What is asked of the piece of a run whose report is closed. */
  readonly questions: readonly Question[];
  /** Whether what becomes of other runs depends on it, as with a start: one learner sits one section at a time. */
  readonly concernsOthers: boolean;
  /** With a section that opens: whose it is, and which of their sections in other sittings stood as open when that was decided. */
  readonly opens?: { readonly userId: string; readonly standing: readonly string[] };
}

/**
 * Stores what a step has made of a sitting, all or nothing; false where another one was stored since `before` was read.
 * What is opened again loses the marks that it had been given. With the release of a sitting its sections count for progress,
 * and what is made void after that counts no longer.
 */
export async function storeChange(change: SittingChange): Promise<boolean> {
  const { before, next, newRuns, audit } = change;
  const isWhole = next.sitting !== before.sitting || newRuns.length > 0 || audit !== null || change.concernsOthers;
  const changed = before.runs.flatMap((stored) => {
    const run = next.runs.find(({ id }) => id === stored.run.id);
    return run && run !== stored.run ? [{ stored, run }] : [];
  });
  if (!isWhole && changed.length === 0) return true;
  const { id, state, plannedAt } = next.sitting;
  const { revision } = before;
  const uncounted = before.sitting.state === "released" ? uncountedBy(next, before.runs) : [];
  try {
    await database().$transaction(async (transaction) => {
      const kept = await transaction.sitting.updateMany({
        where: { id, revision },
        data: isWhole
          ? { state, plannedAt, course: sittingCourseColumn.write(courseOf(next.sitting)), revision: revision + 1 }
          : { revision },
      });
      if (kept.count === 0) throw new Overtaken();
      // two sittings have no revision in common, so that two sections could be opened at once
      const others = change.opens ? await standingRuns(transaction, change.opens.userId) : [];
      if (others.some((other) => other.sittingId !== id && !change.opens?.standing.includes(other.id)))
        throw new Overtaken();
      for (const { stored, run } of changed) {
        const written = await transaction.sectionRun.updateMany({
          where: { id: run.id, revision: stored.revision },
          data: { ...runColumns(run), revision: stored.revision + 1 },
        });
        if (written.count === 0) throw new Overtaken();
        const ofPractice = practiceChange(stored, run, change.questions);
        if (ofPractice) await transaction.practice.update({ where: { id: stored.practiceId }, data: ofPractice });
        if (isTakenBack(stored, run))
          await transaction.attempt.deleteMany({ where: { practiceId: stored.practiceId } });
      }
      for (const { run, practice } of newRuns) {
        await transaction.practice.create({ data: practiceRow(practice) });
        const { userId, section, isBorderline } = run;
        await transaction.sectionRun.create({
          data: {
            id: run.id,
            sittingId: id,
            userId,
            section,
            isBorderline,
            practiceId: practice.id,
            ...runColumns(run),
          },
        });
      }
      const counted = before.sitting.state === "released" ? [] : await countedBy(transaction, next, before.runs);
      await countSections(transaction, counted);
      await forgetTallies(
        transaction,
        uncounted.map(({ run }) => run.userId),
      );
      await queueCounted(
        transaction,
        counted.map(({ attemptId }) => attemptId),
        next.sitting.releasedAt ?? new Date(0),
      );
      await queueTakenBack(transaction, await attemptsIn(transaction, uncounted), audit?.at ?? new Date(0));
      if (audit) await transaction.auditEntry.create({ data: auditRow(audit) });
    }, PATIENCE);
    return true;
  } catch (error) {
    if (error instanceof Overtaken) return false;
    throw error;
  }
}

/**
 * What counts for progress once a sitting is as in `next`: every marked section, if it is released. Asked in the transaction, so
 * that a section which is marked at the same moment counts once: here, or when its marks are stored.
 */
async function countedBy(
  transaction: Prisma.TransactionClient,
  { sitting, runs }: SittingWithRuns,
  stored: readonly StoredRun[],
): Promise<CountedSection[]> {
  if (sitting.state !== "released") return [];
  const isClosed = new Set(runs.filter(({ state }) => COUNTS.includes(state)).map(({ id }) => id));
  const attempts = await transaction.attempt.findMany({
    where: { practiceId: { in: stored.filter(({ run }) => isClosed.has(run.id)).map(({ practiceId }) => practiceId) } },
    select: { id: true, handedInAt: true, practice: { select: { userId: true } }, observations: true },
    orderBy: { id: "asc" },
  });
  return attempts.map(({ id, handedInAt, practice: { userId }, observations: row }) => ({
    attemptId: id,
    userId,
    handedInAt,
    observations: row?.version === OBSERVATION_VERSION ? observationsColumn.read(row.value) : null,
  }));
}

const COUNTS: readonly RunState[] = ["handed-in", "expired"];

/** Sections that counted in a released sitting and do so no longer. */
function uncountedBy({ sitting, runs }: SittingWithRuns, stored: readonly StoredRun[]): readonly StoredRun[] {
  const stays = new Set(
    runs.filter(({ state }) => sitting.state === "released" && COUNTS.includes(state)).map(({ id }) => id),
  );
  return stored.filter(({ run, isMarked }) => isMarked && COUNTS.includes(run.state) && !stays.has(run.id));
}

async function attemptsIn({ attempt }: Prisma.TransactionClient, stored: readonly StoredRun[]): Promise<string[]> {
  if (stored.length === 0) return [];
  const where = { practiceId: { in: stored.map(({ practiceId }) => practiceId) } };
  const rows = await attempt.findMany({ where, orderBy: { id: "asc" }, select: { id: true } });
  return rows.map(({ id }) => id);
}

/** Rolls a transaction back. */
class Overtaken extends Error {}

const isTakenBack = (stored: StoredRun, run: SectionRun): boolean => stored.isMarked && isOpen(run);

function practiceChange(
  stored: StoredRun,
  run: SectionRun,
  questions: readonly Question[],
): Prisma.PracticeUpdateInput | null {
  const before = stored.run;
  const isSaved = run.sequence !== before.sequence || run.savedAt !== before.savedAt;
  const isStarted = before.startedAt === null && run.startedAt !== null;
  const isBack = isTakenBack(stored, run);
  const isClosing = before.reportClosedAt === null && run.reportClosedAt !== null;
  if (!isSaved && !isStarted && !isBack && !isClosing) return null;
  const { sequence, windowId, savedAt, startedAt, reportClosedAt } = run;
  return {
    ...(isSaved && { report: reportColumn.write(run.report), sequence, windowId, savedAt }),
    ...(isStarted && startedAt && { startedAt }),
    ...(isClosing && { reportClosedAt, questions: questionsColumn.write([...questions]) }),
    ...(isBack && { state: "open", handedInAt: null, truth: Prisma.DbNull, generatorVersion: null }),
  };
}

function storedOf(row: SittingRow): StoredSitting {
  return {
    sitting: {
      id: row.id,
      paper: paperColumn.read(row.paperVersion.content),
      state: row.state,
      plannedAt: row.plannedAt,
      ...sittingCourseColumn.read(row.course),
    },
    revision: row.revision,
    groupId: row.groupId,
    groupName: row.group.name,
    paperId: row.paperVersion.paperId,
    paperVersionId: row.paperVersionId,
    isForWholeClass: row.isForWholeClass,
    erased: readErased(row.erased),
    runs: row.runs.map(storedRunOf),
  };
}

function storedRunOf(row: SittingRow["runs"][number]): StoredRun {
  const { practice } = row;
  const { sequence, windowId, savedAt, reportClosedAt } = practice;
  return {
    run: {
      id: row.id,
      userId: row.userId,
      section: row.section as Section,
      isBorderline: row.isBorderline,
      state: STATE_OF[row.state],
      ...runCourseColumn.read(row.course),
      liveWindowId: row.liveWindowId,
      report: EMPTY_REPORT,
      sequence,
      windowId,
      savedAt,
      reportClosedAt,
    },
    learnerName: row.user.name,
    revision: row.revision,
    practiceId: practice.id,
    book: practice.book,
    specimenId: practice.specimenId,
    specimen: practice.specimen,
    isMarked: practice.state === "handedIn",
    marks: marksOf(practice.attempts),
  };
}

const STATE_OF: Readonly<Record<SectionRunModel["state"], RunState>> = {
  waiting: "waiting",
  running: "running",
  paused: "paused",
  handedIn: "handed-in",
  expired: "expired",
  void: "void",
};

const runColumns = (run: SectionRun) => ({
  state: run.state === "handed-in" ? ("handedIn" as const) : run.state,
  course: runCourseColumn.write(structuredCourse(run)),
  liveWindowId: run.liveWindowId,
});

// readonly lists as the columns take them
const structuredCourse = (run: SectionRun) => run as unknown as Parameters<typeof runCourseColumn.write>[0];
const courseOf = (sitting: Sitting) => sitting as unknown as Parameters<typeof sittingCourseColumn.write>[0];
