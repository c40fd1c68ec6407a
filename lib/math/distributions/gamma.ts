/** Lanczos coefficients for g = 7 and n = 9, as published by P. Godfrey (2001); relative error below 1e-13. */
const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
];

/** Natural logarithm of the gamma function of a positive number. */
export function logGamma(x: number): number {
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - logGamma(1 - x);
  const z = x - 1;
  const t = z + 7.5;
  const sum = LANCZOS.slice(1).reduce((total, coefficient, i) => total + coefficient / (z + i + 1), LANCZOS[0]);
  return 0.5 * Math.log(2 * Math.PI) + (z + 0.5) * Math.log(t) - t + Math.log(sum);
}

const TINY = 1e-300;
const PRECISION = 1e-15;
const MOST_TERMS = 10_000;

/**
 * Regularised lower incomplete gamma function P(a, x), a > 0, x >= 0: the distribution function of a gamma variable of shape a.
 * Power series below a + 1, continued fraction by Lentz's method above (Abramowitz and Stegun 1964, 6.5.29 and 6.5.31).
 */
export function lowerGamma(a: number, x: number): number {
  if (x <= 0) return 0;
  const front = Math.exp(a * Math.log(x) - x - logGamma(a));
  return x < a + 1 ? front * seriesOf(a, x) : 1 - front * fractionOf(a, x);
}

/** 1 - P(a, x), precise where it is small. */
export function upperGamma(a: number, x: number): number {
  if (x <= 0) return 1;
  const front = Math.exp(a * Math.log(x) - x - logGamma(a));
  return x < a + 1 ? 1 - front * seriesOf(a, x) : front * fractionOf(a, x);
}

function seriesOf(a: number, x: number): number {
  let term = 1 / a;
  let sum = term;
  for (let n = 1; n < MOST_TERMS && term > sum * PRECISION; n++) {
    term *= x / (a + n);
    sum += term;
  }
  return sum;
}

function fractionOf(a: number, x: number): number {
  let b = x + 1 - a;
  let c = 1 / TINY;
  let d = 1 / b;
  let value = d;
  for (let n = 1; n < MOST_TERMS; n++) {
    const factor = -n * (n - a);
    b += 2;
    d = 1 / (factor * d + b || TINY);
    c = b + factor / c || TINY;
    value *= d * c;
    if (Math.abs(d * c - 1) < PRECISION) break;
  }
  return value;
}
