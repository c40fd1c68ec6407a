import {
  type Cluster,
  clusterSpread,
  effectiveShare,
  effectiveShareBy,
  type Interval,
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

/** How like each other the observations of one learner are taken to be where all or none came out one way. Common practice, no source. */
const LIKENESS = 0.1;

/**
 * So many out of so many, learner by learner, taken together. The interval is Wilson's with the effective number of observations
 * (`effectiveShare`; cf. N. Dean and M. Pagano, J. Surv. Stat. Methodol. 3, 2015): what one learner does hangs together, so that
 * many observations of few learners say less of a class than as many of many. Of a single learner it is that of `shareOf`.
 */
export function clusteredShare(byLearner: readonly { readonly count: number; readonly of: number }[]): Share {
  const clusters = byLearner.map(({ count, of }): Cluster => ({ sum: count, size: of }));
  const share = shareOf(
    clusters.reduce((total, { sum }) => total + sum, 0),
    clusters.reduce((total, { size }) => total + size, 0),
  );
  const spread = clusterSpread(clusters);
  if (spread === null || share.share === null) return share;
  const { of, share: p } = share;
  const counting = p === 0 || p === 1 ? effectiveShareBy(LIKENESS, spread) : effectiveShare(spread, (p * (1 - p)) / of);
  return { ...share, interval: wilsonInterval(p * of * counting, of * counting) };
}
