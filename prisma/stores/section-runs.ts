import { database } from "../client";
import type { Prisma } from "../generated/client/client";

/** A section that was started and is not closed, as far as is stored. */
export interface StandingRun {
  readonly id: string;
  readonly sittingId: string;
}

/** Sections of a learner that were started and are not closed, as far as is stored. */
export const listStandingRuns = (userId: string): Promise<readonly StandingRun[]> => standingRuns(database(), userId);

/** The same within a transaction. */
export const standingRuns = (db: Prisma.TransactionClient, userId: string): Promise<readonly StandingRun[]> =>
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
