import type { ReviewedMark } from "@/lib/practice";
import type { Section, SectionResult } from "@/lib/results";
import type { ReviewAct, ReviewContent } from "@/lib/review";
import { database, PATIENCE } from "../client";
import { resultColumn, reviewContentColumn } from "../columns";
import type { Prisma } from "../generated/client/client";
import { forgetTallies } from "../tallies";
import { queueReviewed } from "../xapi-outbox";
import { type AuditEntry, auditRow } from "./audit";
import { reviewActOf } from "./practices";

/** A marked section of a sitting with everything that tutors said to its mark. */
export interface ReviewableRun {
  readonly runId: string;
  readonly sittingId: string;
  readonly userId: string;
  readonly learnerName: string;
  readonly section: Section;
  readonly practiceId: string;
  readonly specimenId: string;
  readonly attemptId: string;
  /** Counts the acts that were stored on it. */
  readonly revision: number;
  readonly first: SectionResult;
  readonly acts: readonly ReviewAct[];
  /** Null where no tutor has acted on it. */
  readonly reviewedAt: Date | null;
}

/** The marked sections of a sitting that count, or of one run of it; those that are void are left out. */
export async function readReviewableRuns(of: {
  readonly sittingId: string;
  readonly runId?: string;
}): Promise<readonly ReviewableRun[]> {
  const rows = await database().sectionRun.findMany({
    where: { sittingId: of.sittingId, ...(of.runId && { id: of.runId }), ...CLOSED },
    orderBy: [{ user: { name: "asc" } }, { userId: "asc" }, { id: "asc" }],
    include: {
      user: { select: { name: true } },
      practice: {
        select: {
          specimenId: true,
          attempts: { include: { reviewActs: { orderBy: { id: "asc" } } } },
        },
      },
    },
  });
  return rows.flatMap(({ id, sittingId, userId, user, practiceId, section, practice }) => {
    const [attempt] = practice.attempts;
    if (!attempt) return [];
    return [
      {
        runId: id,
        sittingId,
        userId,
        learnerName: user.name,
        section: section as Section,
        practiceId,
        specimenId: practice.specimenId,
        attemptId: attempt.id,
        revision: attempt.reviewRevision,
        first: resultColumn.read(attempt.result),
        acts: attempt.reviewActs.map(reviewActOf),
        reviewedAt: attempt.reviewedAt,
      },
    ];
  });
}

/** How these sections were marked at hand-in, and what tutors said to it since. */
export async function readMarkings(
  attemptIds: readonly string[],
): Promise<readonly Pick<ReviewableRun, "first" | "acts">[]> {
  const rows = await database().attempt.findMany({
    where: { id: { in: [...attemptIds] } },
    include: { reviewActs: { orderBy: { id: "asc" } } },
  });
  return rows.map(({ result, reviewActs }) => ({
    first: resultColumn.read(result),
    acts: reviewActs.map(reviewActOf),
  }));
}

/** One act to be stored on one mark, with what it comes to. */
export interface ReviewToStore {
  readonly attemptId: string;
  /** As it was read: where another act came in between nothing is stored. */
  readonly revision: number;
  readonly act: Omit<ReviewAct, "id" | "what"> & { readonly what: ReviewContent };
  /** What the mark comes to with it. */
  readonly reviewed: ReviewedMark;
  readonly audit: AuditEntry;
}

/** Rolls a transaction back. */
class Overtaken extends Error {}

const CLOSED = { state: { in: ["handedIn", "expired"] } } satisfies Prisma.SectionRunWhereInput;
const OVER = { state: { in: ["closed", "released"] } } satisfies Prisma.SittingWhereInput;

/**
 * Stores acts with the marks that they come to and their audit entries, all or nothing; false where one of the marks was acted
 * on, opened again or made void meanwhile. What was observed of these sections is made anew, and whoever's progress it counts in
 * already is built anew with it.
 */
export async function storeReviews(reviews: readonly ReviewToStore[]): Promise<boolean> {
  try {
    await database().$transaction(async (transaction) => {
      for (const { attemptId, revision, act, reviewed, audit } of reviews) {
        const { count } = await transaction.attempt.updateMany({
          where: {
            id: attemptId,
            reviewRevision: revision,
            practice: { run: { is: { ...CLOSED, sitting: { is: OVER } } } },
          },
          data: {
            reviewRevision: revision + 1,
            reviewedThousandths: reviewed.markThousandths,
            reviewedIsPassed: reviewed.isPassed,
            reviewedAt: reviewed.at,
          },
        });
        if (count === 0) throw new Overtaken();
        const { at, by, reason, what } = act;
        const row = { attemptId, at, actorId: by.id, actorName: by.name, reason };
        await transaction.reviewAct.create({ data: { ...row, content: reviewContentColumn.write(what) } });
        await transaction.auditEntry.create({ data: auditRow(audit) });
        await queueReviewed(transaction, attemptId, at);
      }
      await forgetObserved(
        transaction,
        reviews.map(({ attemptId }) => attemptId),
      );
    }, PATIENCE);
    return true;
  } catch (error) {
    if (error instanceof Overtaken) return false;
    throw error;
  }
}

/** No version of the program: the row is made anew, and is kept till then for the time that was worked. */
const STALE = 0;

async function forgetObserved(transaction: Prisma.TransactionClient, attemptIds: readonly string[]): Promise<void> {
  await transaction.attemptObservations.updateMany({
    where: { attemptId: { in: [...attemptIds] } },
    data: { version: STALE },
  });
  const counted = await transaction.practice.findMany({
    where: {
      attempts: { some: { id: { in: [...attemptIds] } } },
      run: { is: { sitting: { state: "released" } } },
    },
    select: { userId: true },
  });
  await forgetTallies(
    transaction,
    counted.map(({ userId }) => userId),
  );
}
