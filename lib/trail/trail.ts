import type { Mm } from "../math";
import { type Aspect, extentOf, faceOf } from "../weld";
import { BIN } from "./thresholds";

/**
 * Where on a piece somebody had their eyes, as far as a screen can tell: for each aspect, each line along the weld and each
 * bin on it how long it was in sight, in beats. What was not looked at is left out.
 */
export type Trail = Readonly<Partial<Record<Aspect, readonly number[]>>>;

export const NO_TRAIL: Trail = {};

/** The unit of a trail, s. Whole numbers add up to the same in any order. */
export const BEAT = 0.5;

/**
 * What is counted of a bin: in sight from too far away to see much; close, or under a lens; close while the torch was held low,
 * by the eighth of a turn that its light came from.
 */
export const AFAR = 0;
export const CLOSE = 1;
export const FIRST_LOW = 2;
export const EIGHTHS = 8;
export const CHANNELS = FIRST_LOW + EIGHTHS;

/**
 * The lines along the weld: the weld itself, and the plate on either side of it, A or the base plate first. What is to be found
 * lies within 26 mm of the middle of the weld.
 */
export const LINES = 3;
type LinePlaces = readonly [weld: Mm | null, first: Mm | null, second: Mm | null];
const BUTT: LinePlaces = [0, 18, -18];
/** How far across each line lies as an aspect shows it, mm; null where the other plate hides it. */
const LINES_AT: Readonly<Record<Aspect, LinePlaces>> = {
  cap: BUTT,
  root: BUTT,
  fillet: [0, 12, -12],
  base: [3, 17, null],
  standing: [-3, null, -17],
};

/** The line that is nearest to a place across, as its aspect shows it. */
export function lineAt(aspect: Aspect, across: Mm): number {
  const away = LINES_AT[aspect].map((at) => (at === null ? Number.POSITIVE_INFINITY : Math.abs(at - across)));
  return away.indexOf(Math.min(...away));
}

/** Half of what belongs to a line beside the weld, mm. */
const HALF_LINE: Mm = 9;

/** The lines in sight between two places across: those that are crossed, and the one that lies in the middle. */
export function linesBetween(aspect: Aspect, low: Mm, high: Mm): readonly number[] {
  const middle = (low + high) / 2;
  const nearest = lineAt(aspect, middle);
  return LINES_AT[aspect].flatMap((at, line) => {
    if (at === null) return [];
    const isIn = (at >= low && at <= high) || (line === nearest && Math.abs(at - middle) <= HALF_LINE);
    return isIn ? [line] : [];
  });
}

/** Bins of an aspect, from the datum on. */
export const binsOf = (aspect: Aspect): number => Math.ceil(extentOf(aspect).length / BIN);

/** Where the count of a bin stands. */
export const countAt = (aspect: Aspect, channel: number, line: number, bin: number): number =>
  (channel * LINES + line) * binsOf(aspect) + bin;

export const countsOf = (aspect: Aspect): number => CHANNELS * LINES * binsOf(aspect);

/** How a face can be turned to the eye. */
export const aspectsOf = (trail: Trail, face: ReturnType<typeof faceOf>): readonly Aspect[] =>
  (Object.keys(trail) as Aspect[]).filter((aspect) => faceOf(aspect) === face);

/** Both together, count by count. */
export function merged(a: Trail, b: Trail): Trail {
  const sums: Partial<Record<Aspect, readonly number[]>> = { ...a };
  for (const [aspect, counts] of Object.entries(b) as [Aspect, readonly number[]][]) {
    const other = sums[aspect];
    sums[aspect] = other ? counts.map((count, at) => count + other[at]) : counts;
  }
  return sums;
}
