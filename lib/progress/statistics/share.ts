import {
  type ClusterSpread,
  clusterSpread,
  effectiveShare,
  effectiveShareBy,
  type Interval,
  shareForFew,
  wilsonInterval,
} from "../../math";
import { stillNeeded } from "./enough";

/** So many out of so many, with Wilson's 95 % interval; null where there was nothing to count. */
export interface Share {
  readonly count: number;
  readonly of: number;
  readonly share: number | null;
  readonly interval: Interval | null;
  /** How many more observations it takes until the share says something; 0 if there are enough. */
  readonly needed: number;
}

export const shareOf = (count: number, of: number): Share => ({
  count,
  of,
  share: of === 0 ? null : count / of,
  interval: of === 0 ? null : wilsonInterval(count, of),
  needed: stillNeeded(of),
});

/** How like each other the observations of one learner are taken to be where they cannot tell. Common practice, no source. */
export const LIKENESS = 0.1;
/** Of fewer that came out one way it cannot be seen how learners differ. Common practice, no source. */
const TELLING = 5;

/** So many out of so many of one learner. */
interface Counted {
  readonly count: number;
  readonly of: number;
}

/**
 * So many out of so many of a class, learner by learner. The interval is Wilson's with the effective number of observations
 * (`effectiveShare`; cf. N. Dean and M. Pagano, J. Surv. Stat. Methodol. 3, 2015): what one learner does hangs together, so that
 * many observations of few learners say less of a class than as many of many. Of a class that only one learner tells of next to
 * nothing is known, and the interval is as wide as that.
 */
export function clusteredShare(byLearner: readonly Counted[]): Share {
  const share = together(byLearner);
  if (share.share === null) return share;
  const spread = spreadOf(byLearner);
  return { ...share, interval: intervalOf(share, countingOf(share, spread) * shareForFew(spread)) };
}

/**
 * The most that such a share surely is, to put shares of one class in order: the upper end of the same interval without the
 * allowance for few learners. With it, what two learners tell would stand behind what a single one does, or the other way round,
 * by their number alone. 1 where there was nothing to count.
 */
export function surelyAtMost(byLearner: readonly Counted[]): number {
  const share = together(byLearner);
  return share.share === null ? 1 : intervalOf(share, countingOf(share, spreadOf(byLearner))).high;
}

const together = (byLearner: readonly Counted[]): Share =>
  shareOf(
    byLearner.reduce((sum, { count }) => sum + count, 0),
    byLearner.reduce((sum, { of }) => sum + of, 0),
  );

const intervalOf = ({ count, of }: Counted, counting: number): Interval =>
  wilsonInterval(count * counting, of * counting);

/** How learners differ; `variance` is null where only one has anything. */
type Spread = Pick<ClusterSpread, "degrees" | "meanSize"> & { readonly variance: number | null; readonly had: number };

function spreadOf(byLearner: readonly Counted[]): Spread {
  const had = byLearner.filter(({ of }) => of > 0);
  const spread = clusterSpread(had.map(({ count, of }) => ({ sum: count, size: of })));
  return { ...(spread ?? { variance: null, degrees: 1, meanSize: had[0]?.of ?? 0 }), had: had.length };
}

/** What share of the observations counts. Few that came out one way lie where they do by chance: then it is the smaller one. */
function countingOf({ count, of }: Counted, { variance, meanSize, had }: Spread): number {
  const assumed = effectiveShareBy(LIKENESS, { meanSize });
  const fewer = Math.min(count, of - count);
  if (variance === null || fewer === 0) return assumed;
  const seen = effectiveShare({ variance }, (count * (of - count)) / of ** 3);
  return fewer < Math.max(TELLING, had) ? Math.min(seen, assumed) : seen;
}
