import { IMPERFECTION_TYPES, type ImperfectionType } from "../../imperfections";
import { clusteredShare, type Share, surelyAtMost } from "../statistics/share";
import type { Overview } from "../tallies/overview";

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

/**
 * Types that a class had before it, what is most surely missed first: by the share that is found at most
 * (`surelyAtMost`), so that one miss of one does not come before many of many. Equals stand in catalogue order.
 */
export function missedTypes(learners: readonly Overview[]): MissedType[] {
  return IMPERFECTION_TYPES.flatMap((type) => {
    const byLearner = learners.map(({ types }): FoundOf | null => {
      const counts = types[type];
      return counts && counts.total > 0 ? { found: counts.found, total: counts.total } : null;
    });
    const had = byLearner.filter((one) => one !== null);
    if (had.length === 0) return [];
    const judged = had.filter(isJudged);
    const counts = had.map(({ found, total }) => ({ count: found, of: total }));
    const missed: MissedType = {
      type,
      found: clusteredShare(counts),
      judged: judged.length,
      belowHalf: judged.filter((one) => 2 * one.found < one.total).length,
      byLearner,
    };
    return [{ missed, atMost: surelyAtMost(counts) }];
  })
    .sort((a, b) => a.atMost - b.atMost)
    .map(({ missed }) => missed);
}

export const isJudged = ({ total }: FoundOf): boolean => total >= JUDGED_FROM;
