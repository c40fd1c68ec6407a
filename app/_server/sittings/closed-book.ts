import { isOpen } from "@/lib/sittings";
import { listSittingsAt, readSitting, type StoredRun } from "@/prisma/stores/sittings";
import { byClock } from "./change-sitting";

/** The sitting in which a learner has a section with a closed book open just now, or null. */
export const closedBookOf = (userId: string, now: Date): Promise<string | null> =>
  sittingAt(userId, now, ({ book }) => book === "closed");

/** Another sitting in which a learner has a section open just now, or null. */
export const otherSittingOf = (userId: string, sittingId: string, now: Date): Promise<string | null> =>
  sittingAt(userId, now, () => true, sittingId);

async function sittingAt(
  userId: string,
  now: Date,
  suits: (stored: StoredRun) => boolean,
  but?: string,
): Promise<string | null> {
  for (const id of await listSittingsAt(userId)) {
    if (id === but) continue;
    const stored = await readSitting(id);
    // what the clock has closed may still stand as open
    const open = new Set(
      stored
        ? byClock(stored, now)
            .runs.filter(isOpen)
            .map((run) => run.id)
        : [],
    );
    if (stored?.runs.some((one) => one.run.userId === userId && open.has(one.run.id) && suits(one))) return id;
  }
  return null;
}
