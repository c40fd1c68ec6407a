import type { ImperfectionType } from "@/lib/imperfections";
import {
  addSizeCounts,
  type EyeMeasure,
  type LearnerTally,
  type SectionObservations,
  type SizeCounts,
} from "@/lib/progress";
import { eyeMeasureOf } from "@/lib/specimen";
import { listLatestObservations, readLearnerTally } from "@/prisma/stores/progress";
import { buildTallies } from "./build";
import { type HistoryMark, historyOf } from "./history-of";

/** How one learner gets on, from everything that counts: practice handed in, and sittings that are released and not void. */
export interface LearnerProgress {
  readonly tally: LearnerTally;
  /** Imperfections by what strikes the eye of their type, and how much of that there was. */
  readonly bySize: Readonly<Record<EyeMeasure, SizeCounts>>;
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
  return { tally, bySize: bySize(tally), history, latest };
}

function bySize({ types }: LearnerTally): LearnerProgress["bySize"] {
  const sums: Record<EyeMeasure, SizeCounts> = { size: {}, length: {}, width: {} };
  for (const [type, tally] of Object.entries(types)) {
    const measure = eyeMeasureOf(type as ImperfectionType);
    sums[measure] = addSizeCounts(sums[measure], tally.bySize);
  }
  return sums;
}
