import type { Criteria } from "@/lib/criteria";
import type { Book, ListedPractice, Practice, SectionMark } from "@/lib/practice";
import { OBSERVATION_VERSION, type SectionObservations } from "@/lib/progress";
import { EMPTY_REPORT } from "@/lib/report";
import { MARKED_SECTIONS, type Section, type SectionResult } from "@/lib/results";
import type { ReviewAct } from "@/lib/review";
import type { Truth } from "@/lib/specimen";
import { database, PATIENCE } from "../client";
import { reportColumn, resultColumn, reviewContentColumn, sentencingCriteriaColumn, truthColumn } from "../columns";
import { Prisma } from "../generated/client/client";
import type { AttemptModel, PracticeModel, ReviewActModel } from "../generated/client/models";
import { observationsColumn } from "../progress-columns";
import { countSections } from "../tallies";
import { queueCounted } from "../xapi-outbox";

export const withAttempts = { attempts: { omit: { result: true } } } as const;
const withRun = { ...withAttempts, run: { select: { id: true } } } as const;
/** A section of a sitting that was opened again meanwhile is not marked. */
const closedRunOrNone: Prisma.PracticeWhereInput = {
  OR: [{ run: { is: null } }, { run: { is: { state: { in: ["handedIn", "expired"] } } } }],
};
/** Outside any sitting: what a learner does for practice. */
export const forPractice = { run: { is: null } } as const;

export interface PracticeToCreate {
  readonly id: string;
  readonly userId: string;
  readonly specimenId: string;
  readonly section: Section;
  readonly passMark: number;
  readonly criteria: Criteria | null;
  readonly book: Book;
  readonly startedAt: Date;
}

/** A section's mark with its account, as it was marked at hand-in, and what tutors said to it since. */
export interface AccountedMark extends SectionMark {
  readonly result: SectionResult;
  /** In the order in which they were done. */
  readonly acts: readonly ReviewAct[];
}

/** Everything kept of a handed-in practice, as values of that day. */
export interface HandedInPractice {
  readonly practice: Practice;
  readonly truth: Truth;
  readonly generatorVersion: string;
  /** One, or one a face where each face was a section of its own. */
  readonly sections: readonly AccountedMark[];
}

export async function createPractice(practice: PracticeToCreate): Promise<void> {
  await database().practice.create({ data: practiceRow(practice) });
}

/** The row of a practice that nothing has been written in. */
export const practiceRow = ({ criteria, ...practice }: PracticeToCreate) => ({
  ...practice,
  report: reportColumn.write(EMPTY_REPORT),
  ...(criteria && { criteria: sentencingCriteriaColumn.write(criteria) }),
});

export async function readPractice(id: string): Promise<Practice | null> {
  const row = await database().practice.findUnique({
    where: { id },
    include: withRun,
    omit: { truth: true, questions: true },
  });
  return row && practiceOf(row);
}

/** One person's practices outside sittings, the latest start first. */
export async function listPractices(userId: string): Promise<readonly ListedPractice[]> {
  const rows = await database().practice.findMany({
    where: { userId, ...forPractice },
    orderBy: [{ startedAt: "desc" }, { id: "asc" }],
    include: withRun,
    omit: { truth: true, criteria: true, questions: true },
  });
  return rows.map(listedOf);
}

/** By which criteria somebody last chose to sentence, and whether with their table; null where they never did. */
export async function readLastChoice(
  userId: string,
): Promise<{ readonly criteriaId: string; readonly book: Book } | null> {
  const row = await database().practice.findFirst({
    where: { userId, criteria: { not: Prisma.AnyNull }, ...forPractice },
    orderBy: [{ startedAt: "desc" }, { id: "asc" }],
    select: { criteria: true, book: true },
  });
  return row && { criteriaId: sentencingCriteriaColumn.read(row.criteria).id, book: row.book };
}

/** Of which sections somebody has begun a piece outside sittings. */
export async function listPractisedSections(userId: string): Promise<readonly Section[]> {
  const rows = await database().practice.groupBy({ by: ["section"], where: { userId, ...forPractice } });
  return rows.map(({ section }) => pieceOf(section));
}

/** Whether somebody has a piece of a section that is not handed in, outside sittings. */
export async function hasUnfinished(userId: string, section: Section): Promise<boolean> {
  const where = { userId, section, state: "open" as const, ...forPractice };
  return (await database().practice.findFirst({ where, select: { id: true } })) !== null;
}

export async function countOpenPractices(userId: string): Promise<number> {
  return database().practice.count({ where: { userId, state: "open", ...forPractice } });
}

/**
 * Puts another specimen on the benches of open practices, in place of one that could not be made: on all of them at once, or
 * on none where somebody else did that before.
 */
export async function replaceSpecimen(ids: readonly string[], from: string, to: string): Promise<void> {
  await database().practice.updateMany({
    where: { id: { in: [...ids] }, specimenId: from, state: "open" },
    data: { specimenId: to },
  });
}

export interface HandIn {
  readonly id: string;
  /** Number of the save that was marked, and when the report was closed: if either changed meanwhile, nothing is handed in. */
  readonly sequence: number;
  readonly reportClosedAt: Date | null;
  readonly truth: Truth;
  readonly generatorVersion: string;
  readonly sections: readonly (Omit<AccountedMark, "reviewed" | "acts"> & ObservedSection)[];
  readonly handedInAt: Date;
}

interface ObservedSection {
  readonly id: string;
  /** What it tells for progress; null where that could not be made out, which then is tried again later. */
  readonly observations: SectionObservations | null;
}

/**
 * Closes a practice and stores the truth, the marks and what they tell for progress with it, all or nothing; false if it is no
 * longer as marked. It counts for progress at once, in a sitting once that is released.
 */
export async function handIn({
  id,
  sequence,
  reportClosedAt,
  truth,
  generatorVersion,
  sections,
  handedInAt,
}: HandIn): Promise<boolean> {
  return database().$transaction(async (transaction) => {
    const { count } = await transaction.practice.updateMany({
      where: { id, state: "open", sequence, reportClosedAt, ...closedRunOrNone },
      data: { state: "handedIn", handedInAt, truth: truthColumn.write(truth), generatorVersion },
    });
    if (count === 0) return false;
    // a step of its sitting that was read before it was marked is taken again
    await transaction.sectionRun.updateMany({ where: { practiceId: id }, data: { revision: { increment: 1 } } });
    await transaction.attempt.createMany({
      data: sections.map(({ result, observations: _, ...section }) => ({
        ...section,
        practiceId: id,
        handedInAt,
        result: resultColumn.write(result),
      })),
    });
    await transaction.attemptObservations.createMany({
      data: sections.flatMap(({ id: attemptId, observations }) =>
        observations
          ? [{ attemptId, version: OBSERVATION_VERSION, value: observationsColumn.write(observations) }]
          : [],
      ),
    });
    const { userId, run } = await transaction.practice.findUniqueOrThrow({
      where: { id },
      select: { userId: true, run: { select: { sitting: { select: { state: true } } } } },
    });
    if (run === null || run.sitting.state === "released") {
      await countSections(
        transaction,
        sections.map(({ id: attemptId, observations }) => ({ attemptId, userId, handedInAt, observations })),
      );
      await queueCounted(
        transaction,
        sections.map(({ id: attemptId }) => attemptId),
        handedInAt,
      );
    }
    return true;
  }, PATIENCE);
}

/** A handed-in practice with its answers, or null if there is none or it is still open. */
export async function readHandedInPractice(id: string): Promise<HandedInPractice | null> {
  const row = await database().practice.findUnique({
    where: { id },
    include: { attempts: { include: { reviewActs: { orderBy: { id: "asc" } } } }, run: { select: { id: true } } },
  });
  if (!row || row.truth === null || row.generatorVersion === null) return null;
  if (row.attempts.length === 0) throw new Error(`practice ${id} was handed in without a mark`);
  return {
    practice: practiceOf(row),
    truth: truthColumn.read(row.truth),
    generatorVersion: row.generatorVersion,
    sections: inOrder(row.attempts).map((attempt) => ({
      ...markOf(attempt),
      result: resultColumn.read(attempt.result),
      acts: attempt.reviewActs.map(reviewActOf),
    })),
  };
}

type ListedRow = Omit<PracticeModel, "truth" | "criteria" | "questions"> & {
  readonly attempts: readonly Omit<AttemptModel, "result">[];
  readonly run: { readonly id: string } | null;
};
type PracticeRow = ListedRow & Pick<PracticeModel, "criteria">;

const practiceOf = (row: PracticeRow): Practice => ({
  ...listedOf(row),
  criteria: row.criteria === null ? null : sentencingCriteriaColumn.read(row.criteria),
});

function listedOf(row: ListedRow): ListedPractice {
  const { id, userId, specimenId, sequence, windowId, startedAt, savedAt, reportClosedAt, handedInAt } = row;
  return {
    id,
    userId,
    specimenId,
    runId: row.run?.id ?? null,
    state: row.state === "open" ? "open" : "handed-in",
    section: pieceOf(row.section),
    passMark: row.passMark,
    book: row.book,
    report: reportColumn.read(row.report),
    sequence,
    windowId,
    startedAt,
    savedAt,
    reportClosedAt,
    handedInAt,
    marks: marksOf(row.attempts),
  };
}

/** What a practice is at is a section of today; only marks are older. */
function pieceOf(section: PracticeModel["section"]): Section {
  if (section === "plate" || section === "fillet") return section;
  throw new Error(`no piece has the section ${section}`);
}

function inOrder<Row extends Pick<AttemptModel, "section">>(attempts: readonly Row[]): readonly Row[] {
  return MARKED_SECTIONS.flatMap((one) => attempts.filter(({ section }) => section === one));
}

/** The marks of a practice, in the order of sections. */
export const marksOf = (attempts: ListedRow["attempts"]): readonly SectionMark[] => inOrder(attempts).map(markOf);

export function markOf({
  section,
  passMark,
  markThousandths,
  isPassed,
  ruleVersion,
  reviewedThousandths,
  reviewedIsPassed,
  reviewedAt,
}: Omit<AttemptModel, "result">): SectionMark {
  const computed = { section, passMark, markThousandths, isPassed, ruleVersion };
  if (reviewedThousandths === null || reviewedIsPassed === null || reviewedAt === null) return computed;
  const reviewed = { markThousandths: reviewedThousandths, isPassed: reviewedIsPassed, at: reviewedAt };
  return { ...computed, reviewed };
}

export const reviewActOf = ({ id, at, actorId, actorName, content, reason }: ReviewActModel): ReviewAct => ({
  id,
  at,
  by: { id: actorId, name: actorName },
  reason,
  what: reviewContentColumn.read(content),
});
