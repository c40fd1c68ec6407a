import { boxBlur, floatGrid, nearestColumn, nearestRow } from "../../surface";
import type { Field } from "../field";
import type { Region } from "../measure";

/** Unevenness below this is polish: nothing catches on it, mm. */
const SMOOTH = 0.0025;
/** How many times the reach the unevenness is averaged over. */
const AVERAGED = 4;

/**
 * How high a pixel stands among its neighbours within `reach` mm, in units of the roughness round it: about -2 in a
 * crease to 2 on a crest, on ripples and on rolled plate alike. What is finer than `soft` mm is not felt. For the pixels of
 * a box; 0 outside it.
 */
export function grainOf(field: Field, box: Region, reach: number, soft = 0): (k: number) => number {
  const { grid, z } = field;
  const i0 = nearestColumn(grid, box.x0);
  const j0 = nearestRow(grid, box.y0);
  const columns = nearestColumn(grid, box.x1) - i0 + 1;
  const rows = nearestRow(grid, box.y1) - j0 + 1;
  let heights = floatGrid(columns * rows);
  for (let j = 0; j < rows; j++) {
    const from = (j0 + j) * grid.columns + i0;
    heights.set(z.subarray(from, from + columns), j * columns);
  }
  if (soft > 0) heights = boxBlur(heights, columns, rows, soft * grid.perMm, soft * grid.perMm, 1);
  const pixels = reach * grid.perMm;
  const relief = boxBlur(heights, columns, rows, pixels, pixels, 2);
  for (let n = 0; n < relief.length; n++) relief[n] = heights[n] - relief[n];
  const wide = AVERAGED * pixels;
  const squares = boxBlur(
    relief.map((value) => value * value),
    columns,
    rows,
    wide,
    wide,
    1,
  );
  for (let n = 0; n < relief.length; n++) relief[n] /= Math.sqrt(squares[n] + SMOOTH * SMOOTH);
  return (k) => {
    const i = (k % grid.columns) - i0;
    const j = Math.floor(k / grid.columns) - j0;
    return i < 0 || j < 0 || i >= columns || j >= rows ? 0 : relief[j * columns + i];
  };
}
