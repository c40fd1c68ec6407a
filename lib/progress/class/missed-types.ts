import type { ImperfectionType } from "../../imperfections";
import { detectionByType } from "../statistics/detection-by-type";
import type { Share } from "../statistics/share";
import { type Overview, sumOverviews } from "../tallies/overview";

/** From so many of a type on it is said of a single learner whether more than half are found. Common practice, no source. */
export const JUDGED_FROM = 4;

/** How one learner finds one type. */
export interface FoundOf {
  readonly found: number;
  readonly total: number;
}

/** How a class finds one type. */
export interface MissedType {
  readonly type: ImperfectionType;
  /** Everybody's together. */
  readonly found: Share;
  /** How many learners had at least `JUDGED_FROM`, and how many of those find fewer than half. */
  readonly judged: number;
  readonly belowHalf: number;
  /** Learner by learner, in the order given; null where there was none. */
  readonly byLearner: readonly (FoundOf | null)[];
}

/** Types that a class had before it, those most surely missed first (`detectionByType`). */
export function missedTypes(learners: readonly Overview[], together = sumOverviews(learners)): MissedType[] {
  return detectionByType(together.types).map(({ type, found }) => {
    const byLearner = learners.map(({ types }): FoundOf | null => {
      const counts = types[type];
      return counts && counts.total > 0 ? { found: counts.found, total: counts.total } : null;
    });
    const judged = byLearner.filter((one) => one !== null && isJudged(one)) as readonly FoundOf[];
    return {
      type,
      found,
      judged: judged.length,
      belowHalf: judged.filter((one) => 2 * one.found < one.total).length,
      byLearner,
    };
  });
}

export const isJudged = ({ total }: FoundOf): boolean => total >= JUDGED_FROM;
