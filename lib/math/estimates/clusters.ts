import { twoSidedZ } from "../distributions/normal";
import { twoSidedT } from "../distributions/student";
import { CONFIDENCE } from "./interval";

/** What one cluster, such as a learner, adds to a ratio: a sum over so much (observations, or metres). */
export interface Cluster {
  readonly sum: number;
  readonly size: number;
}

/** How a ratio of sums to sizes, all clusters together, scatters from sample to sample of clusters. */
export interface ClusterSpread {
  /** Variance of the ratio by leaving out each cluster in turn. */
  readonly variance: number;
  /** Degrees of freedom: as many clusters of one size as would weigh the same, less one; at least 1. */
  readonly degrees: number;
  /** Mean size of the cluster that an observation is in. */
  readonly meanSize: number;
}

/**
 * The spread of a ratio over clusters, by the jackknife (the ratio estimator of W. G. Cochran, Sampling Techniques, 1977, with its
 * residuals corrected for leverage: R. M. Bell and D. F. McCaffrey, Survey Methodology 28, 2002), with the effective number of
 * clusters of L. Kish, Survey Sampling, 1965. Null below two clusters, which say nothing of how clusters differ.
 */
export function clusterSpread(clusters: readonly Cluster[]): ClusterSpread | null {
  const all = clusters.filter(({ size }) => size > 0);
  if (all.length < 2) return null;
  let [sum, size, squares] = [0, 0, 0];
  for (const one of all) {
    sum += one.sum;
    size += one.size;
    squares += one.size ** 2;
  }
  const ratio = sum / size;
  let scatter = 0;
  for (const one of all) scatter += ((one.sum - ratio * one.size) / (size - one.size)) ** 2;
  return {
    variance: ((all.length - 1) / all.length) * scatter,
    degrees: Math.max(1, size ** 2 / squares - 1),
    meanSize: squares / size,
  };
}

/**
 * What share of the observations counts in an interval for independent ones, 0 to 1: an effective sample size, the number over the
 * design effect (J. N. K. Rao and A. J. Scott, Biometrics 48, 1992). It never counts more than there are.
 * @param independent variance of the ratio if all observations were independent, above 0
 */
export const effectiveShare = ({ variance }: Pick<ClusterSpread, "variance">, independent: number): number =>
  Math.min(1, independent / variance);

/** The same where it cannot be seen how clusters vary, so that an intraclass correlation has to be taken from elsewhere (Kish's design effect). */
export const effectiveShareBy = (correlation: number, { meanSize }: Pick<ClusterSpread, "meanSize">): number =>
  1 / (1 + Math.max(0, meanSize - 1) * correlation);

/**
 * What share of those counts besides in an interval that goes by z, since few clusters hardly tell how clusters vary: the square of
 * z over Student's t (E. L. Korn and B. I. Graubard, Survey Methodology 24, 1998). Not for an interval that goes by t already.
 */
export const shareForFew = ({ degrees }: Pick<ClusterSpread, "degrees">): number =>
  (twoSidedZ(CONFIDENCE) / twoSidedT(CONFIDENCE, degrees)) ** 2;
