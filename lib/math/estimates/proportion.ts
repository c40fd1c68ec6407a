import { betaQuantile } from "../distributions/beta";
import { twoSidedZ } from "../distributions/normal";
import { CONFIDENCE, type Interval } from "./interval";

/**
 * Wilson's score interval for a proportion (E. B. Wilson, J. Am. Stat. Assoc. 22, 1927; method 3 of R. G. Newcombe, Statistics in
 * Medicine 17, 1998). `of` is above 0; neither needs to be a whole number, as with an effective number of observations.
 */
export function wilsonInterval(count: number, of: number, confidence = CONFIDENCE): Interval {
  const z = twoSidedZ(confidence);
  const share = count / of;
  const middle = 2 * count + z ** 2;
  const half = z * Math.sqrt(z ** 2 + 4 * count * (1 - share));
  const whole = 2 * (of + z ** 2);
  return {
    low: count === 0 ? 0 : (middle - half) / whole,
    high: count === of ? 1 : (middle + half) / whole,
  };
}

/** Exact interval for a proportion (C. J. Clopper and E. S. Pearson, Biometrika 26, 1934). `of` is at least 1. */
export function clopperPearsonInterval(count: number, of: number, confidence = CONFIDENCE): Interval {
  const oneSided = (1 + confidence) / 2;
  return {
    low: clopperPearsonLower(count, of, oneSided),
    high: 1 - clopperPearsonLower(of - count, of, oneSided),
  };
}

/** Exact lower bound of a proportion, of which one is sure on one side with a confidence. */
export const clopperPearsonLower = (count: number, of: number, confidence = CONFIDENCE): number =>
  count === 0 ? 0 : betaQuantile(1 - confidence, count, of - count + 1);

/**
 * How many trials it takes to show a proportion with a confidence if so many of them fail: 29 for 90 % with 95 % and no failure,
 * 46 with one (the exact binomial plans behind "90/95", MIL-HDBK-1823A).
 */
export function trialsToShow(proportion: number, failures: number, confidence = CONFIDENCE): number {
  let trials = failures + 1;
  while (clopperPearsonLower(trials - failures, trials, confidence) < proportion) trials++;
  return trials;
}
