import { clusterSpread, effectiveShare, effectiveShareBy, type Interval, twoSidedT, twoSidedZ } from "../../math";
import type { Moments } from "../tallies/moments";
import { stillNeeded } from "./enough";
import { LIKENESS } from "./share";

/** How measured differs from true: written less true, in the unit of what was measured. */
export interface Agreement {
  readonly n: number;
  /** Mean difference: above 0 what is written is too large. */
  readonly bias: number;
  readonly deviation: number;
  readonly biasInterval: Interval;
  /** Bias -+ 1.96 standard deviations: 95 of 100 measurements of this hand lie between. */
  readonly limits: Interval;
  readonly lowerLimitInterval: Interval;
  readonly upperLimitInterval: Interval;
  /** Which way it is off, where the interval of the bias leaves no doubt. */
  readonly direction: "over" | "under" | "neither";
  readonly needed: number;
}

/**
 * Bias and limits of agreement with their 95 % intervals (J. M. Bland and D. G. Altman, Lancet i, 1986): the standard error of a
 * limit is taken as sqrt(3 s^2 / n), Student's t with n - 1 degrees of freedom. Null below three differences.
 * @param byLearner the same differences learner by learner, where they are of a class: each hand is off in its own way, so that
 * the intervals go by the effective number of differences (`effectiveShare`) and by the degrees of freedom of so many learners
 */
export function agreementOf({ n, sum, sumOfSquares }: Moments, byLearner?: readonly Moments[]): Agreement | null {
  if (n < 3) return null;
  const bias = sum / n / 1000;
  const deviation = Math.sqrt(Math.max(0, (sumOfSquares - sum ** 2 / n) / (n - 1))) / 1000;
  const { share, degrees } = byLearner ? ofClass(byLearner, n, deviation) : { share: 1, degrees: n - 1 };
  const t = twoSidedT(0.95, degrees);
  const counting = n * share;
  const around = (middle: number, error: number): Interval => ({ low: middle - t * error, high: middle + t * error });
  const reach = twoSidedZ(0.95) * deviation;
  const biasInterval = around(bias, deviation / Math.sqrt(counting));
  const limitError = deviation * Math.sqrt(3 / counting);
  return {
    n,
    bias,
    deviation,
    biasInterval,
    limits: { low: bias - reach, high: bias + reach },
    lowerLimitInterval: around(bias - reach, limitError),
    upperLimitInterval: around(bias + reach, limitError),
    direction: biasInterval.low > 0 ? "over" : biasInterval.high < 0 ? "under" : "neither",
    needed: stillNeeded(n),
  };
}

/** What share of the differences of a class counts, and degrees of freedom. */
function ofClass(byLearner: readonly Moments[], n: number, deviation: number) {
  const spread = clusterSpread(byLearner.map((own) => ({ sum: own.sum / 1000, size: own.n })));
  // one learner does not tell how learners differ
  if (!spread) return { share: effectiveShareBy(LIKENESS, { meanSize: n }), degrees: 1 };
  // where all differences are the same there is nothing to be uncertain of
  return { share: deviation > 0 ? effectiveShare(spread, deviation ** 2 / n) : 1, degrees: spread.degrees };
}
