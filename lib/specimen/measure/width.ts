import { clamp, tabulate } from "../../math";
import { columnX, type Grid } from "../../surface";
import type { AcrossSearch } from "./crown";
import type { Finished, Measured } from "./finished";
import { columnsIn, gather, type Sounding } from "./sounding";
import { toeNear } from "./toe";

/** Toes are averaged over this half length: scallops are no change of width, mm. */
const AVERAGED = 1;
/** Half length over which the weld's own width is the median, and its step, mm. */
const NORMAL = { reach: 80, step: 1 };

/** Distance between the two outer toes at x, each averaged over +-1 mm; NaN where there is no weld. */
export const widthNear = (face: Finished, x: number): number => middleAndWidth(face, x).width;

const middleAndWidth = (face: Finished, x: number) => {
  const low = toeNear(face, -1, x, AVERAGED);
  const high = toeNear(face, 1, x, AVERAGED);
  return { low, high, width: high - low };
};

/** Median width of the weld within 80 mm of x, sampled every millimetre. */
function normalWidth(widths: Float32Array, x: number): number {
  const first = clamp(Math.round((x - NORMAL.reach) / NORMAL.step), 0, widths.length - 1);
  const last = clamp(Math.round((x + NORMAL.reach) / NORMAL.step), 0, widths.length - 1);
  const near = widths
    .slice(first, last + 1)
    .filter((width) => !Number.isNaN(width))
    .sort();
  return near[near.length >> 1];
}

function widthsAlong(face: Finished, grid: Grid): Float32Array {
  const count = Math.floor(grid.columns / grid.perMm / NORMAL.step);
  return tabulate(count, (n) => middleAndWidth(face, grid.x0 + n * NORMAL.step).width);
}

/**
 * Change of the weld's width: in every column how far the distance between the two outer toes, each averaged over +-1 mm,
 * differs from the weld's own width (median over the 80 mm to both sides). Size and width = largest change; start and end
 * = longest stretch that differs by more than the threshold; the outline follows the toes.
 */
export function measureWidthChange(face: Finished, search: AcrossSearch): Measured | null {
  const { grid } = face.strip;
  const widths = widthsAlong(face, grid);
  const soundings: Sounding[] = [];
  for (const i of columnsIn(face.strip, search.range)) {
    const x = columnX(grid, i);
    const { low, high, width } = middleAndWidth(face, x);
    if (Number.isNaN(width)) continue;
    const value = Math.abs(width - normalWidth(widths, x));
    soundings.push({ x, value, y: 0.5 * (low + high), low, high });
  }
  const found = gather(soundings, grid.perMm, search.threshold, search.bridge);
  return found && { ...found, width: found.size };
}
