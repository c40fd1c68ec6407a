import { randomUUID } from "node:crypto";
import { database } from "../client";

/**
 * Counts a try under a key and returns how many there were since the last pause of that length. The table is the one in
 * which the sign-in library counts as well, under keys of its own.
 */
export async function countTry(key: string, now: Date, pauseMs: number): Promise<number> {
  const db = database();
  const time = BigInt(now.getTime());
  return db.$transaction(async (transaction) => {
    const row = await transaction.rateLimit.findUnique({ where: { key } });
    const count = row && time - row.lastRequest < BigInt(pauseMs) ? row.count + 1 : 1;
    await transaction.rateLimit.upsert({
      where: { key },
      create: { id: randomUUID(), key, count, lastRequest: time },
      update: { count, lastRequest: time },
    });
    return count;
  });
}

/** Takes a try back that turned out to be none. */
export async function forgetTry(key: string): Promise<void> {
  await database().rateLimit.updateMany({ where: { key, count: { gt: 0 } }, data: { count: { decrement: 1 } } });
}
