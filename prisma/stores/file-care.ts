import { database } from "../client";

/** The one row on the file. */
export const FILE = "file";

/** Since when the file may still hold what was erased; null where it does not. */
export async function readDirtySince(): Promise<Date | null> {
  const row = await database().fileCare.findUnique({ where: { id: FILE } });
  return row?.dirtySince ?? null;
}

/** Whether anybody is at work who would have to wait: at a sitting, or at a report that was saved since. */
export async function isInUse(since: Date): Promise<boolean> {
  const db = database();
  const sittings = await db.sitting.count({ where: { state: { in: ["open", "running", "paused"] } } });
  return sittings > 0 || (await db.practice.count({ where: { savedAt: { gte: since } } })) > 0;
}

/**
 * Writes the whole file anew, so that neither its free pages nor its log hold what was deleted. Whoever writes meanwhile waits.
 * False where somebody was reading just then: the log could not be emptied, and it has to be done again.
 */
export async function writeFileAnew(): Promise<boolean> {
  const db = database();
  await db.$executeRawUnsafe("VACUUM");
  const [{ busy }] = await db.$queryRawUnsafe<{ readonly busy: number | bigint }[]>("PRAGMA wal_checkpoint(TRUNCATE)");
  if (Number(busy) !== 0) return false;
  await db.fileCare.updateMany({ where: { id: FILE }, data: { dirtySince: null } });
  return true;
}
