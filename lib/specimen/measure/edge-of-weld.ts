import { rowOf, rowY } from "../../surface";
import type { Heights, Side } from "./finished";
import type { PlateLine } from "./plate-line";

/** Metal this much above the plate belongs to the weld, mm. */
export const CONTACT_RISE = 0.12;
/** The edge is looked for from this far outside the toe to the middle of the joint, mm. */
export const SEARCH_FROM = 6;

/**
 * Outermost y in a column at which the metal lies 0.12 mm above the plate, coming in from outside, interpolated between
 * pixels. It must rise further over the next three pixels: a globule's rim or a scratch is no edge. NaN if there is none.
 */
export function edgeOfWeld(field: Heights, i: number, plate: PlateLine, side: Side, outer: number): number {
  const { grid, z } = field;
  const rise = (j: number) => z[j * grid.columns + i] - plate(rowY(grid, j));
  const stop = Math.round(rowOf(grid, 0));
  for (let j = Math.round(rowOf(grid, outer)); (j - stop) * side >= 0; j -= side) {
    const here = rise(j);
    if (here <= CONTACT_RISE || rise(j - 3 * side) <= here) continue;
    const beyond = rise(j + side);
    const share = beyond < CONTACT_RISE ? (here - CONTACT_RISE) / (here - beyond) : 0;
    return rowY(grid, j) + (side * share) / grid.perMm;
  }
  return Number.NaN;
}
