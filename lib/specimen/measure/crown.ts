import { median } from "../../math";
import { columnX, rowOf, rowY } from "../../surface";
import type { Finished, Measured, Range } from "./finished";
import { plateBeside, plateChord } from "./plate-line";
import { columnsIn, gather, type Sounding, soundColumn } from "./sounding";
import { toeNear } from "./toe";

const TOE_AVERAGED = 0.6;
/** A grain on the weld that is shorter along it than this does not carry a gauge's end, mm. */
const CROWN_EVENED = 0.4;
/** Half the thickness of a height gauge's blade, mm: its end comes to rest on the highest under it. */
const BLADE = 1.5;

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
 * The crown's height at every place of `xs`, mm, as a height gauge shows it: the highest under its blade of what the columns
 * show, each the median of those within 0.4 mm; NaN where there is no weld.
 */
export function crownsShown(face: Finished, xs: readonly number[]): number[] {
  const reach = BLADE + CROWN_EVENED;
  const columns = columnsIn(face.strip, { from: Math.min(...xs) - reach, to: Math.max(...xs) + reach });
  const heights = columns.map((i) => crownHeight(face, i));
  const half = Math.round(CROWN_EVENED * face.strip.grid.perMm);
  const evened = heights.map((_, n) =>
    median(heights.slice(Math.max(0, n - half), n + half + 1).filter((height) => !Number.isNaN(height))),
  );
  return xs.map((x) => highestWithin(face, columns, evened, x));
}

/** The largest of `heights`, one a column, under a blade at x; NaN where none of them is a number. */
function highestWithin({ strip }: Finished, columns: readonly number[], heights: readonly number[], x: number): number {
  const under = columnsIn(strip, { from: x - BLADE, to: x + BLADE });
  let highest = Number.NaN;
  for (const i of under) {
    const height = heights[i - columns[0]];
    if (Math.abs(columnX(strip.grid, i) - x) > BLADE || Number.isNaN(height)) continue;
    if (Number.isNaN(highest) || height > highest) highest = height;
  }
  return highest;
}

function crownAt(face: Finished, i: number, threshold: number): Sounding | null {
  const x = columnX(face.strip.grid, i);
  const low = toeNear(face, -1, x, TOE_AVERAGED);
  const high = toeNear(face, 1, x, TOE_AVERAGED);
  if (Number.isNaN(low) || Number.isNaN(high)) return null;
  const chord = plateChord(face, x, low, high);
  return soundColumn(face.strip, i, low, high, threshold, (z, y) => z - chord(y));
}

/** The largest height in a column above the line between the plates at both toes, mm; NaN where there is no weld. */
function crownHeight(face: Finished, i: number): number {
  const { grid, z } = face.strip;
  const x = columnX(grid, i);
  const low = toeNear(face, -1, x, TOE_AVERAGED);
  const high = toeNear(face, 1, x, TOE_AVERAGED);
  if (Number.isNaN(low) || Number.isNaN(high)) return Number.NaN;
  const level = plateBeside(face, -1, x)(low);
  const slope = (plateBeside(face, 1, x)(high) - level) / (high - low);
  const last = Math.min(grid.rows - 1, Math.floor(rowOf(grid, high)));
  let highest = Number.NEGATIVE_INFINITY;
  for (let j = Math.max(0, Math.ceil(rowOf(grid, low))); j <= last; j++) {
    const height = z[j * grid.columns + i] - (level + slope * (rowY(grid, j) - low));
    if (height > highest) highest = height;
  }
  return highest;
}
