import type { LearnerTally, SectionObservations } from "@/lib/progress";
import { listLatestObservations, readLearnerTally } from "@/prisma/stores/progress";
import { buildTallies } from "./build";
import { type HistoryMark, historyOf } from "./history-of";

/** How one learner gets on, from everything that counts: practice handed in, and sittings that are released and not void. */
export interface LearnerProgress {
  readonly tally: LearnerTally;
  /** The earliest first. */
  readonly history: readonly HistoryMark[];
  /** What the latest sections tell, the latest first. */
  readonly latest: readonly SectionObservations[];
}

/** So many sections tell how somebody works at present. Common practice, no source. */
const LATEST = 10;

/** Tallies that are to be built anew are built first. */
export async function progressOf(userId: string): Promise<LearnerProgress> {
  await buildTallies(userId);
  const [{ tally }, history, latest] = await Promise.all([
    readLearnerTally(userId),
    historyOf(userId),
    listLatestObservations(userId, LATEST),
  ]);
  return { tally, history, latest };
}
