import { median } from "../../math";
import { columnX } from "../../surface";
import type { Finished, Measured, Range } from "./finished";
import { plateChord } from "./plate-line";
import { columnsIn, gather, type Sounding, soundColumn } from "./sounding";
import { toeNear } from "./toe";

const TOE_AVERAGED = 0.6;
const CROWN_EVENED = 1;

/** How a crown or a hollow across the whole weld is looked for, mm. */
export interface AcrossSearch {
  readonly range: Range;
  readonly threshold: number;
  readonly bridge: number;
}

/**
 * Height of the weld's crown: in every column the largest height above the straight line between the fitted plates at
 * the two outer toes (toes averaged over +-0.6 mm). Size = largest height; start and end = longest stretch higher than
 * the threshold; width = span higher than the threshold.
 */
export function measureCrown(face: Finished, search: AcrossSearch): Measured | null {
  const soundings: Sounding[] = [];
  for (const i of columnsIn(face.strip, search.range)) {
    const sounding = crownAt(face, i, search.threshold);
    if (sounding) soundings.push(sounding);
  }
  return gather(soundings, face.strip.grid.perMm, search.threshold, search.bridge);
}

/**
 * The crown's height at x, mm: the median of the columns within 1 mm, so that a grain on the weld does not count. Each column is
 * measured once, however many places it lies near to.
 */
export function crownAlong(face: Finished): (x: number) => number {
  const known = new Map<number, number | undefined>();
  const heightOf = (i: number): number | undefined => {
    if (!known.has(i)) known.set(i, crownAt(face, i, Number.POSITIVE_INFINITY)?.value);
    return known.get(i);
  };
  return (x) =>
    median(
      columnsIn(face.strip, { from: x - CROWN_EVENED, to: x + CROWN_EVENED })
        .map(heightOf)
        .filter((height) => height !== undefined),
    );
}

function crownAt(face: Finished, i: number, threshold: number): Sounding | null {
  const x = columnX(face.strip.grid, i);
  const low = toeNear(face, -1, x, TOE_AVERAGED);
  const high = toeNear(face, 1, x, TOE_AVERAGED);
  if (Number.isNaN(low) || Number.isNaN(high)) return null;
  const chord = plateChord(face, x, low, high);
  return soundColumn(face.strip, i, low, high, threshold, (z, y) => z - chord(y));
}
