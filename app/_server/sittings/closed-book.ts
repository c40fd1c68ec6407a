import { isOpen } from "@/lib/sittings";
import { listClosedBooks, readSitting } from "@/prisma/stores/sittings";
import { byClock } from "./change-sitting";

/** The sitting in which a learner has a section with a closed book open just now, or null. */
export async function closedBookOf(userId: string, now: Date): Promise<string | null> {
  for (const id of new Set(await listClosedBooks(userId))) {
    const stored = await readSitting(id);
    // what the clock has closed may still stand as open
    const runs = stored ? byClock(stored, now).runs : [];
    const books = new Map(stored?.runs.map(({ run, book }) => [run.id, book]));
    if (runs.some((run) => run.userId === userId && isOpen(run) && books.get(run.id) === "closed")) return id;
  }
  return null;
}
