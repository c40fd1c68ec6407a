import { lowerGamma } from "../distributions/gamma";
import { solveRising } from "../distributions/solve";
import { CONFIDENCE, type Interval } from "./interval";

/** Exact interval for the mean of a Poisson count (F. Garwood, Biometrika 28, 1936): half chi-square quantiles. */
export function poissonInterval(count: number, confidence = CONFIDENCE): Interval {
  const tail = (1 - confidence) / 2;
  const most = 20 + 3 * count;
  return {
    low: count === 0 ? 0 : solveRising((mean) => lowerGamma(count, mean), tail, 0, most),
    high: solveRising((mean) => lowerGamma(count + 1, mean), 1 - tail, 0, most),
  };
}
