/** Trials at one abscissa, and how many of them succeeded. */
export interface Trials {
  readonly x: number;
  readonly total: number;
  readonly succeeded: number;
}

/** logit p = intercept + slope x, by maximum likelihood. */
export interface LogisticLine {
  readonly intercept: number;
  readonly slope: number;
  readonly logLikelihood: number;
  /** Standard errors of the two and their covariance, from the inverse of the information. */
  readonly interceptError: number;
  readonly slopeError: number;
  readonly covariance: number;
}

export const logistic = (x: number): number => 1 / (1 + Math.exp(-x));
export const logit = (p: number): number => Math.log(p / (1 - p));

/** log(1 + exp(x)) without overflow. */
const softPlus = (x: number): number => Math.max(x, 0) + Math.log1p(Math.exp(-Math.abs(x)));

/** Log-likelihood of trials under a line of logits. */
export const logLikelihoodOf = (trials: readonly Trials[], intercept: number, slope: number): number =>
  trials.reduce((sum, { x, total, succeeded }) => {
    const logits = intercept + slope * x;
    return sum + succeeded * logits - total * softPlus(logits);
  }, 0);

/**
 * Whether successes and failures overlap, so that a rising or falling line has a finite best slope (A. Albert and J. A. Anderson,
 * Biometrika 71, 1984); false also where everything succeeded or failed, or lies at one abscissa.
 */
export function isOverlapping(trials: readonly Trials[]): boolean {
  const won = trials.filter(({ succeeded }) => succeeded > 0).map(({ x }) => x);
  const lost = trials.filter(({ succeeded, total }) => succeeded < total).map(({ x }) => x);
  return Math.max(...lost) > Math.min(...won) && Math.max(...won) > Math.min(...lost);
}

const STEPS = 100;
const CLOSE = 1e-12;

/** The best line through trials that overlap: Newton's method about the mean abscissa, with halved steps where one overshoots. */
export function fitLogistic(trials: readonly Trials[]): LogisticLine {
  const count = trials.reduce((sum, { total }) => sum + total, 0);
  const mean = trials.reduce((sum, { x, total }) => sum + x * total, 0) / count;
  const centred = trials.map((trial) => ({ ...trial, x: trial.x - mean }));
  const succeeded = trials.reduce((sum, trial) => sum + trial.succeeded, 0);
  let [a, b] = [logit(succeeded / count), 0];
  let best = logLikelihoodOf(centred, a, b);
  for (let step = 0; step < STEPS; step++) {
    const { gradientA, gradientB, aa, ab, bb } = derivatives(centred, a, b);
    const determinant = aa * bb - ab * ab;
    let moveA = (bb * gradientA - ab * gradientB) / determinant;
    let moveB = (aa * gradientB - ab * gradientA) / determinant;
    let next = logLikelihoodOf(centred, a + moveA, b + moveB);
    for (let half = 0; half < 40 && next < best; half++) {
      moveA /= 2;
      moveB /= 2;
      next = logLikelihoodOf(centred, a + moveA, b + moveB);
    }
    if (next < best) break;
    a += moveA;
    b += moveB;
    const gain = next - best;
    best = next;
    if (gain < CLOSE && Math.abs(moveA) + Math.abs(moveB) < 1e-9) break;
  }
  const { aa, ab, bb } = derivatives(centred, a, b);
  const determinant = aa * bb - ab * ab;
  const [varianceA, varianceB, covariance] = [bb / determinant, aa / determinant, -ab / determinant];
  return {
    intercept: a - b * mean,
    slope: b,
    logLikelihood: best,
    interceptError: Math.sqrt(varianceA - 2 * mean * covariance + mean ** 2 * varianceB),
    slopeError: Math.sqrt(varianceB),
    covariance: covariance - mean * varianceB,
  };
}

function derivatives(trials: readonly Trials[], intercept: number, slope: number) {
  let [gradientA, gradientB, aa, ab, bb] = [0, 0, 0, 0, 0];
  for (const { x, total, succeeded } of trials) {
    const p = logistic(intercept + slope * x);
    const weight = total * p * (1 - p);
    gradientA += succeeded - total * p;
    gradientB += (succeeded - total * p) * x;
    aa += weight;
    ab += weight * x;
    bb += weight * x * x;
  }
  return { gradientA, gradientB, aa, ab, bb };
}

/**
 * The largest log-likelihood of a line that does not fall and takes the value `logits` at `x`: the profile likelihood of the
 * abscissa where a probability is reached. It is concave in the slope: Newton's method, kept between bounds.
 */
export function profileThrough(trials: readonly Trials[], x: number, logits: number): number {
  const rise = (slope: number) => {
    let [gradient, information] = [0, 0];
    for (const trial of trials) {
      const from = trial.x - x;
      const p = logistic(logits + slope * from);
      gradient += (trial.succeeded - trial.total * p) * from;
      information += trial.total * p * (1 - p) * from * from;
    }
    return { gradient, information };
  };
  if (rise(0).gradient <= 0) return logLikelihoodOf(trials, logits, 0);
  let [low, high] = [0, 1];
  while (rise(high).gradient > 0 && high < 1e6) [low, high] = [high, 2 * high];
  let slope = (low + high) / 2;
  for (let n = 0; n < 60; n++) {
    const { gradient, information } = rise(slope);
    if (gradient > 0) low = slope;
    else high = slope;
    const next = slope + gradient / information;
    const kept = next > low && next < high ? next : (low + high) / 2;
    const moved = Math.abs(kept - slope);
    slope = kept;
    if (moved < 1e-9 * slope) break;
  }
  return logLikelihoodOf(trials, logits - slope * x, slope);
}
