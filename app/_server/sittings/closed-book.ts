import { isOpen } from "@/lib/sittings";
import { listStandingRuns, type StandingRun } from "@/prisma/stores/section-runs";
import { readSitting, type StoredRun } from "@/prisma/stores/sittings";
import { byClock } from "./change-sitting";

/** The sitting in which a learner has a section with a closed book open just now, or null. */
export async function closedBookOf(userId: string, now: Date): Promise<string | null> {
  return sittingAt(await listStandingRuns(userId), now, ({ book }) => book === "closed");
}

/** Sections of a learner in other sittings: whether one is open just now, and which stand as open, as far as is stored. */
export async function sectionsElsewhere(userId: string, sittingId: string, now: Date) {
  const others = (await listStandingRuns(userId)).filter((run) => run.sittingId !== sittingId);
  return {
    isOpen: (await sittingAt(others, now, () => true)) !== null,
    opens: { userId, standing: others.map(({ id }) => id) },
  } as const;
}

async function sittingAt(
  standing: readonly StandingRun[],
  now: Date,
  suits: (stored: StoredRun) => boolean,
): Promise<string | null> {
  const ids = new Set(standing.map(({ id }) => id));
  for (const sittingId of new Set(standing.map((run) => run.sittingId))) {
    const stored = await readSitting(sittingId);
    // what the clock has closed may still stand as open
    const open = new Set(
      stored
        ? byClock(stored, now)
            .runs.filter(isOpen)
            .map(({ id }) => id)
        : [],
    );
    if (stored?.runs.some((one) => ids.has(one.run.id) && open.has(one.run.id) && suits(one))) return sittingId;
  }
  return null;
}
