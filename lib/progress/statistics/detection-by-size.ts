import {
  fitLogistic,
  type Interval,
  isOverlapping,
  logistic,
  logit,
  logLikelihoodOf,
  normalQuantile,
  profileThrough,
  type Trials,
  twoSidedZ,
} from "../../math";
import { type SizeCounts, sizeOfStep } from "../tallies/size-counts";
import { stillNeeded } from "./enough";

/** How many of one size, mm, there were and were found. */
export interface SizedFinds {
  readonly size: number;
  readonly total: number;
  readonly found: number;
}

/**
 * few: too few, or too few finds or misses among them. one-size: all alike. apart: nothing smaller was found than what was missed,
 * so that the curve could be as steep as one likes. no-rise: larger ones are found no more often than smaller ones.
 */
export type WhyNoCurve = "few" | "one-size" | "apart" | "no-rise";

/** Probability of detection against size, once there is enough to fit it. Sizes in mm. */
export type DetectionCurve =
  | {
      readonly kind: "not-enough";
      readonly why: WhyNoCurve;
      readonly total: number;
      readonly found: number;
      /** How many more it takes at least, and of which sizes they would tell most; null where any would do. */
      readonly needed: number;
      readonly between: Interval | null;
    }
  | {
      readonly kind: "curve";
      readonly total: number;
      readonly found: number;
      /** logit p = intercept + slope ln(size); the slope is positive. */
      readonly intercept: number;
      readonly slope: number;
      readonly a50: number;
      readonly a90: number;
      /** 95 % by likelihood ratio; high is null where the data set no bound, low is 0 where they set none. */
      readonly a50Interval: OpenInterval;
      readonly a90Interval: OpenInterval;
      /** The size that is found in 90 of 100 cases with 95 % confidence on one side; null where no size is. */
      readonly a9095: number | null;
      /** The smallest and the largest size that there was: the curve says nothing beyond them. */
      readonly sizes: Interval;
    };

/** An interval whose upper end may be out of sight. */
export interface OpenInterval {
  readonly low: number;
  readonly high: number | null;
}

/** Fewest of all, and fewest finds and misses among them, before a curve is fitted. Common practice, no source. */
const LEAST = { total: 20, finds: 3, misses: 3 };
/** How many more are asked for where the trouble is not their number. Common practice, no source. */
const MORE = 5;
/** Nothing is looked for beyond these, mm; a bound out there is none. */
const SEARCHED = { low: 1e-3, high: 1e4 };

/** Finds by size of a tally, smallest first. */
export const findsBySize = (counts: SizeCounts): SizedFinds[] =>
  Object.entries(counts)
    .map(([step, { total, found }]) => ({ size: sizeOfStep(step), total, found }))
    .sort((a, b) => a.size - b.size);

/**
 * Fits the chance of a find to the logarithm of the size by maximum likelihood, as MIL-HDBK-1823A does for hit/miss data, with
 * intervals by likelihood ratio (profile likelihood), which hold where there are few data and Wald's are far too wide. The curve
 * never falls.
 */
export function detectionCurve(finds: readonly SizedFinds[]): DetectionCurve {
  const trials = finds.map(({ size, total, found }) => ({ x: Math.log(size), total, succeeded: found }));
  const total = finds.reduce((sum, row) => sum + row.total, 0);
  const found = finds.reduce((sum, row) => sum + row.found, 0);
  const notEnough = (why: WhyNoCurve, needed: number, between: Interval | null = null) =>
    ({ kind: "not-enough", why, total, found, needed, between }) as const;
  const needed = Math.max(
    stillNeeded(total, LEAST.total),
    stillNeeded(found, LEAST.finds),
    stillNeeded(total - found, LEAST.misses),
  );
  if (needed > 0) return notEnough("few", needed);
  const sizes = { low: Math.min(...finds.map(({ size }) => size)), high: Math.max(...finds.map(({ size }) => size)) };
  if (sizes.low === sizes.high) return notEnough("one-size", MORE);
  if (!isOverlapping(trials)) return apart(finds, notEnough);
  const line = fitLogistic(trials);
  if (line.slope <= 0) return notEnough("no-rise", MORE);
  const sizeAt = (p: number) => Math.exp((logit(p) - line.intercept) / line.slope);
  const boundsAt = (p: number, z: number) => profileBounds(trials, p, sizeAt(p), line.logLikelihood - z ** 2 / 2);
  return {
    kind: "curve",
    total,
    found,
    intercept: line.intercept,
    slope: line.slope,
    a50: sizeAt(0.5),
    a90: sizeAt(0.9),
    a50Interval: boundsAt(0.5, twoSidedZ(0.95)),
    a90Interval: boundsAt(0.9, twoSidedZ(0.95)),
    a9095: boundsAt(0.9, normalQuantile(0.95)).high,
    sizes,
  };
}

/** Chance of a find at a size, mm, by a fitted curve. */
export const chanceAt = ({ intercept, slope }: { intercept: number; slope: number }, size: number): number =>
  logistic(intercept + slope * Math.log(size));

function apart(
  finds: readonly SizedFinds[],
  notEnough: (why: WhyNoCurve, needed: number, between: Interval | null) => DetectionCurve,
): DetectionCurve {
  const largestMiss = Math.max(...finds.filter(({ total, found }) => found < total).map(({ size }) => size));
  const smallestFind = Math.min(...finds.filter(({ found }) => found > 0).map(({ size }) => size));
  // small ones found and large ones missed is no threshold
  if (largestMiss > smallestFind) return notEnough("no-rise", MORE, null);
  return notEnough("apart", MORE, { low: largestMiss, high: smallestFind });
}

/** Sizes between which the curve may reach p without its likelihood falling below a least value. */
function profileBounds(trials: readonly Trials[], p: number, best: number, least: number): OpenInterval {
  const isLikely = (x: number) => profileThrough(trials, x, logit(p)) >= least;
  // a level line never reaches p, or lies above it everywhere: if the data allow one, there is no bound on that side
  const level =
    trials.reduce((sum, { succeeded }) => sum + succeeded, 0) / trials.reduce((n, { total }) => n + total, 0);
  const isLevelLikely = logLikelihoodOf(trials, logit(level), 0) >= least;
  const from = Math.log(best);
  const low = edge(isLikely, from, Math.log(SEARCHED.low));
  const high = edge(isLikely, from, Math.log(SEARCHED.high));
  return {
    low: low === null || (isLevelLikely && level >= p) ? 0 : Math.exp(low),
    high: high === null || (isLevelLikely && level <= p) ? null : Math.exp(high),
  };
}

/** Where likely turns into unlikely on the way to a limit, or null where it does not. */
function edge(isLikely: (x: number) => boolean, from: number, limit: number): number | null {
  if (from === limit || (limit > from ? from > limit : from < limit)) return null;
  let inside = from;
  let outside = from;
  for (let step = 0.1; isLikely(outside); step *= 2) {
    inside = outside;
    if (outside === limit) return null;
    outside = limit > from ? Math.min(limit, outside + step) : Math.max(limit, outside - step);
  }
  for (let n = 0; n < 28; n++) {
    const middle = (inside + outside) / 2;
    if (isLikely(middle)) inside = middle;
    else outside = middle;
  }
  return inside;
}
