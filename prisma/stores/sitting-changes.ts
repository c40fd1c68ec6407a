import { OBSERVATION_VERSION } from "@/lib/progress";
import type { Question } from "@/lib/questions";
import { isOpen, type RunState, type SectionRun, type Sitting, type SittingWithRuns } from "@/lib/sittings";
import { database, PATIENCE } from "../client";
import { questionsColumn, reportColumn } from "../columns";
import { Prisma } from "../generated/client/client";
import { observationsColumn } from "../progress-columns";
import { runCourseColumn, sittingCourseColumn } from "../run-columns";
import { type CountedSection, countSections, forgetTallies } from "../tallies";
import { queueCounted, queueTakenBack } from "../xapi-outbox";
import { type AuditEntry, auditRow } from "./audit";
import { type PracticeToCreate, practiceRow } from "./practices";
import { standingRuns } from "./section-runs";
import type { StoredRun, StoredSitting } from "./sittings";

export interface SittingToCreate {
  readonly sitting: Sitting;
  readonly groupId: string;
  readonly paperVersionId: string;
  readonly isForWholeClass: boolean;
  readonly createdAt: Date;
  readonly runs: readonly NewRun[];
  readonly audit: AuditEntry;
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

const runColumns = (run: SectionRun) => ({
  state: run.state === "handed-in" ? ("handedIn" as const) : run.state,
  course: runCourseColumn.write(structuredCourse(run)),
  liveWindowId: run.liveWindowId,
});

// readonly lists as the columns take them
const structuredCourse = (run: SectionRun) => run as unknown as Parameters<typeof runCourseColumn.write>[0];
const courseOf = (sitting: Sitting) => sitting as unknown as Parameters<typeof sittingCourseColumn.write>[0];
