import { logGamma } from "./gamma";
import { solveRising } from "./solve";

const TINY = 1e-300;
const PRECISION = 1e-15;

/**
 * Regularised incomplete beta function I_x(a, b), a > 0, b > 0, 0 <= x <= 1: the distribution function of a beta variable.
 * Continued fraction by Lentz's method (Abramowitz and Stegun 1964, 26.5.8).
 */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  // the fraction converges fast on one side of the mean only
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(1 - x, b, a);
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x));
  return (front / a) * fractionOf(x, a, b);
}

function fractionOf(x: number, a: number, b: number): number {
  let c = 1;
  let d = 1 / (1 - ((a + b) * x) / (a + 1) || TINY);
  let value = d;
  for (let m = 1; m < 10_000; m++) {
    for (const factor of [
      (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m)),
      (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1)),
    ]) {
      d = 1 / (1 + factor * d || TINY);
      c = 1 + factor / c || TINY;
      value *= d * c;
    }
    if (Math.abs(d * c - 1) < PRECISION) break;
  }
  return value;
}

/** The x at which I_x(a, b) is `probability`. */
export const betaQuantile = (probability: number, a: number, b: number): number =>
  solveRising((x) => incompleteBeta(x, a, b), probability, 0, 1);
