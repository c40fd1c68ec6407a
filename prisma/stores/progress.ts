import {
  EMPTY_LEARNER_TALLY,
  EMPTY_OVERVIEW,
  type Learner,
  type LearnerInOrder,
  type LearnerTally,
  NEW_LEARNER,
  OBSERVATION_VERSION,
  type Overview,
  type PlacedSection,
  PROGRESS_VERSION,
  type SectionObservations,
} from "@/lib/progress";
import { type MarkedSection, SECTIONS, type Section } from "@/lib/results";
import { database, isDuplicate, PATIENCE } from "../client";
import { Prisma } from "../generated/client/client";
import { learnerColumn, observationsColumn, overviewColumn } from "../progress-columns";
import { readTallies, writeLearner, writeTallies } from "../tallies";

/** What counts for progress: everything handed in for practice, and of sittings what is released and not void. */
const counts = {
  OR: [
    { practice: { run: { is: null } } },
    { practice: { run: { is: { state: { in: ["handedIn", "expired"] }, sitting: { state: "released" } } } } },
  ],
} satisfies Prisma.AttemptWhereInput;

export interface StoredTally {
  readonly tally: LearnerTally;
  /** False where the tallies are to be built anew and are empty or of before. */
  readonly isCurrent: boolean;
}

/** The tallies of one learner. */
export async function readLearnerTally(userId: string): Promise<StoredTally> {
  const state = await readTallyState(userId);
  const tallies = await readTallies(database(), [userId]);
  return { tally: tallies.get(userId) ?? EMPTY_LEARNER_TALLY, isCurrent: state.isCurrent };
}

export interface TallyState {
  /** Whether the tallies are of everything that counts. */
  readonly isCurrent: boolean;
  /** Whether the learner model has taken in everything that counts, in order. */
  readonly isLearnerCurrent: boolean;
  /** Number of the last change of what counts. */
  readonly revision: number;
}

export async function readTallyState(userId: string): Promise<TallyState> {
  const row = await database().learnerProgress.findUnique({ where: { userId } });
  if (row) {
    const isCurrent = row.version === PROGRESS_VERSION;
    return { isCurrent, isLearnerCurrent: isCurrent && row.learner !== null, revision: row.revision };
  }
  const attempt = await database().attempt.findFirst({ where: { practice: { userId } }, select: { id: true } });
  return { isCurrent: attempt === null, isLearnerCurrent: attempt === null, revision: 0 };
}

/** A learner as the model knows them; null where that is to be built first. */
export async function readLearnerModel(userId: string): Promise<Learner | null> {
  if (!(await readTallyState(userId)).isLearnerCurrent) return null;
  const row = await database().learnerProgress.findUnique({ where: { userId } });
  if (!row) return NEW_LEARNER;
  return row.learner === null || row.version !== PROGRESS_VERSION ? null : learnerColumn.read(row.learner).learner;
}

/** How many sections of a kind count for a learner. */
export const countCounted = (userId: string, section: Section): Promise<number> =>
  database().attempt.count({ where: { section, practice: { userId }, ...counts } });

export interface StoredOverview {
  readonly overview: Overview;
  /** As with the tally. */
  readonly isCurrent: boolean;
}

/** The extracts of many learners' tallies. Whoever has none is not in it. */
export async function readOverviews(userIds: readonly string[]): Promise<ReadonlyMap<string, StoredOverview>> {
  const rows = await database().learnerProgress.findMany({
    where: { userId: { in: [...userIds] } },
    // what the learner model keeps of everybody is as much again
    select: { userId: true, version: true, overview: true },
  });
  return new Map(
    rows.map(({ userId, version, overview }) => [
      userId,
      {
        overview: overview === null || version !== PROGRESS_VERSION ? EMPTY_OVERVIEW : overviewColumn.read(overview),
        isCurrent: version === PROGRESS_VERSION,
      },
    ]),
  );
}

/** The whole tallies of many learners, as they are stored. */
export const readTalliesOf = (userIds: readonly string[]): Promise<ReadonlyMap<string, LearnerTally>> =>
  readTallies(database(), userIds);

/** What a learner's latest sections that count tell, the latest first. Holds truth. */
export async function listLatestObservations(userId: string, atMost: number): Promise<readonly SectionObservations[]> {
  const rows = await database().attempt.findMany({
    where: { practice: { userId }, observations: { is: { version: OBSERVATION_VERSION } }, ...counts },
    orderBy: [{ handedInAt: "desc" }, { id: "asc" }],
    take: atMost,
    select: { observations: { select: { value: true } } },
  });
  return rows.flatMap(({ observations }) => (observations ? [observationsColumn.read(observations.value)] : []));
}

/** What one section earned, as it counts. */
export interface LatestMark {
  readonly userId: string;
  readonly section: MarkedSection;
  /** Thousandths of a mark. */
  readonly thousandths: number;
}

/**
 * The marks of each learner's latest sections that count, at most so many of each kind, the newest last: by the index alone, since
 * the rows of a class hold gigabytes.
 */
export async function listLatestMarks(userIds: readonly string[], atMost: number): Promise<readonly LatestMark[]> {
  if (userIds.length === 0) return [];
  const rows = await database().$queryRaw<
    readonly { readonly userId: string; readonly section: MarkedSection; readonly thousandths: number | bigint }[]
  >`
    SELECT u."id" AS "userId", a."section" AS "section",
      COALESCE(a."reviewedThousandths", a."markThousandths") AS "thousandths"
    FROM "User" u CROSS JOIN (SELECT DISTINCT value AS "name" FROM json_each(${JSON.stringify(SECTIONS)})) AS k
      CROSS JOIN "Practice" p ON p."id" IN (
        SELECT q."id" FROM "Practice" q
          LEFT JOIN "SectionRun" r ON r."practiceId" = q."id"
          LEFT JOIN "Sitting" s ON s."id" = r."sittingId"
        WHERE q."userId" = u."id" AND q."section" = k."name" AND q."handedInAt" IS NOT NULL
          AND (r."id" IS NULL OR (r."state" IN ('handedIn', 'expired') AND s."state" = 'released'))
        ORDER BY q."handedInAt" DESC, q."id" DESC LIMIT ${atMost})
      CROSS JOIN "Attempt" a ON a."practiceId" = p."id" AND a."section" = k."name"
    WHERE u."id" IN (${Prisma.join([...userIds])})
    ORDER BY u."id", a."section", p."handedInAt", p."id"`;
  return rows.map(({ thousandths, ...row }) => ({ ...row, thousandths: Number(thousandths) }));
}

/** What one section of some learners tells, and where its mark sheet is. */
export interface ObservedPiece {
  readonly practiceId: string;
  readonly userId: string;
  readonly observations: SectionObservations;
}

/**
 * What sections that count tell of these learners, practice and what they sat in this class, the latest first: so many of them, from
 * one on. Holds truth.
 */
export async function listObservedPieces(
  groupId: string,
  userIds: readonly string[],
  { from, atMost }: { readonly from: number; readonly atMost: number },
): Promise<readonly ObservedPiece[]> {
  const rows = await database().attempt.findMany({
    where: {
      observations: { is: { version: OBSERVATION_VERSION } },
      AND: [
        counts,
        {
          practice: {
            userId: { in: [...userIds] },
            // another class's sittings are its own tutors'
            OR: [{ run: { is: null } }, { run: { is: { sitting: { groupId } } } }],
          },
        },
      ],
    },
    orderBy: [{ handedInAt: "desc" }, { id: "asc" }],
    skip: from,
    take: atMost,
    select: { practiceId: true, practice: { select: { userId: true } }, observations: { select: { value: true } } },
  });
  return rows.flatMap(({ practiceId, practice: { userId }, observations }) =>
    observations ? [{ practiceId, userId, observations: observationsColumn.read(observations.value) }] : [],
  );
}

/** A marked section of a learner. */
export interface ObservableAttempt {
  readonly id: string;
  readonly practiceId: string;
  readonly section: MarkedSection;
  /** Counts what tutors said to its mark. */
  readonly reviewRevision: number;
}

/** Marked sections of a learner whose observations are missing or of another version, whether they count or not. */
export async function listUnobserved(userId: string): Promise<readonly ObservableAttempt[]> {
  return database().attempt.findMany({
    where: {
      practice: { userId },
      OR: [{ observations: { is: null } }, { observations: { is: { version: { not: OBSERVATION_VERSION } } } }],
    },
    orderBy: { id: "asc" },
    select: { id: true, practiceId: true, section: true, reviewRevision: true },
  });
}

/** Keeps what a marked section tells; one that is gone meanwhile, or whose mark was acted on, is left out. */
export async function storeObservations(
  { id: attemptId, reviewRevision }: Pick<ObservableAttempt, "id" | "reviewRevision">,
  observations: SectionObservations,
): Promise<void> {
  const kept = { version: OBSERVATION_VERSION, value: observationsColumn.write(observations) };
  await database().$transaction(async (transaction) => {
    const attempt = await transaction.attempt.findUnique({
      where: { id: attemptId },
      select: { reviewRevision: true },
    });
    if (attempt?.reviewRevision !== reviewRevision) return;
    await transaction.attemptObservations.upsert({
      where: { attemptId },
      create: { attemptId, ...kept },
      update: kept,
    });
  }, PATIENCE);
}

/** Sections that count for a learner, in the order in which they were handed in. */
export async function listCounted(userId: string): Promise<readonly string[]> {
  const rows = await database().attempt.findMany({
    where: { practice: { userId }, ...counts },
    orderBy: [{ handedInAt: "asc" }, { id: "asc" }],
    select: { id: true },
  });
  return rows.map(({ id }) => id);
}

/** What these sections tell, with their place in the order of handing in; those that nothing is kept of are left out. */
export async function readObservations(attemptIds: readonly string[]): Promise<readonly PlacedSection[]> {
  const rows = await database().attemptObservations.findMany({
    where: { attemptId: { in: [...attemptIds] }, version: OBSERVATION_VERSION },
    include: { attempt: { select: { handedInAt: true } } },
  });
  return rows.map(({ attemptId, value, attempt }) => ({
    id: attemptId,
    at: attempt.handedInAt.getTime(),
    observations: observationsColumn.read(value),
  }));
}

/** What was built of a learner. */
export interface BuiltProgress {
  readonly tally: LearnerTally;
  readonly learner: LearnerInOrder;
}

/** Marked practice outside sittings, the latest first: so many sections, without what they tell. */
export async function listPracticeSections(
  atMost: number,
): Promise<readonly { readonly id: string; readonly userId: string }[]> {
  const rows = await database().attempt.findMany({
    where: { practice: { run: { is: null } }, observations: { is: { version: OBSERVATION_VERSION } } },
    orderBy: [{ handedInAt: "desc" }, { id: "desc" }],
    take: atMost,
    select: { id: true, practice: { select: { userId: true } } },
  });
  return rows.map(({ id, practice: { userId } }) => ({ id, userId }));
}

/** Keeps what was built from what counted at a revision; false where that has changed since. */
export async function storeBuilt(
  userId: string,
  revision: number,
  { tally, learner }: BuiltProgress,
): Promise<boolean> {
  return database().$transaction(async (transaction) => {
    const { count } = await transaction.learnerProgress.updateMany({
      where: { userId, revision },
      data: { version: PROGRESS_VERSION },
    });
    if (count === 0) return false;
    await writeTallies(transaction, [[userId, tally]]);
    await writeLearner(transaction, userId, learner);
    return true;
  }, PATIENCE);
}

/** Learners of whom tallies or model are to be built anew. */
export async function listToBuild(): Promise<readonly string[]> {
  const rows = await database().learnerProgress.findMany({
    where: { OR: [{ version: { not: PROGRESS_VERSION } }, { learner: { equals: Prisma.DbNull } }] },
    orderBy: { userId: "asc" },
    select: { userId: true },
  });
  return rows.map(({ userId }) => userId);
}

/** Learners with marks of whom no tallies were ever kept. */
export async function listWithoutTallies(): Promise<readonly string[]> {
  const rows = await database().user.findMany({
    where: { progress: { is: null }, practices: { some: { attempts: { some: {} } } } },
    orderBy: { id: "asc" },
    select: { id: true },
  });
  return rows.map(({ id }) => id);
}

/** Notes that tallies are kept of a learner, and says at which revision they are. */
export async function beginBuilding(userId: string): Promise<number> {
  const found = await database().learnerProgress.findUnique({ where: { userId } });
  if (found) return found.revision;
  try {
    await database().learnerProgress.create({ data: { userId } });
    return 0;
  } catch (error) {
    if (!isDuplicate(error)) throw error;
    return (await database().learnerProgress.findUniqueOrThrow({ where: { userId } })).revision;
  }
}
