import { database } from "../client";
import type { Prisma } from "../generated/client/client";

/** The one row on the file. */
export const FILE = "file";

/** Since when the file may still hold what was erased; null where it does not. */
export async function readDirtySince(): Promise<Date | null> {
  const row = await database().fileCare.findUnique({ where: { id: FILE } });
  return row?.dirtySince ?? null;
}

const ON = { state: { in: ["running", "paused"] } } satisfies Prisma.SittingWhereInput;

/** Whether a sitting is on, whose clock runs while its learners wait for whatever holds the process up. */
export const isSittingOn = async ({ sitting }: Pick<Prisma.TransactionClient, "sitting"> = database()) =>
  (await sitting.count({ where: ON })) > 0;

/** Whether anybody is at work who would have to wait: at a sitting, or at a report that was saved since. */
export async function isInUse(since: Date): Promise<boolean> {
  const db = database();
  const sittings = await db.sitting.count({ where: { state: { in: ["open", "running", "paused"] } } });
  return sittings > 0 || (await db.practice.count({ where: { savedAt: { gte: since } } })) > 0;
}

/** Writes the whole file anew, so that its free pages hold nothing that was deleted. The whole process waits meanwhile. */
export async function writeFileAnew(): Promise<void> {
  await database().$executeRawUnsafe("VACUUM");
}

/** Empties the log of the file, which holds what was deleted as well; false where somebody was reading just then. */
export async function emptyLog(): Promise<boolean> {
  const [{ busy }] = await database().$queryRawUnsafe<{ readonly busy: number | bigint }[]>(
    "PRAGMA wal_checkpoint(TRUNCATE)",
  );
  return Number(busy) === 0;
}

/** Keeps that the file holds nothing any more of what was erased up to then; false where somebody was erased since. */
export async function noteClean(dirtySince: Date): Promise<boolean> {
  const { count } = await database().fileCare.updateMany({
    where: { id: FILE, dirtySince },
    data: { dirtySince: null },
  });
  return count === 1;
}
