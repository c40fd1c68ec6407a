import type { Heights } from "../gauges";
import type { Mm } from "../math";

/** A picture from above, one byte of grey a point, row by row from the top (largest y) down. */
export interface PlanPicture {
  readonly columns: number;
  readonly rows: number;
  readonly grey: Uint8ClampedArray;
}

/** Light from the upper left, flat enough for shallow grooves to throw a dark side: a unit vector towards the lamp. */
const LAMP = [-0.46, 0.62, 0.64] as const;
/** Slopes are drawn this much steeper than they are. */
const EXAGGERATED = 1.6;
const DARK = 26;
const BRIGHT = 236;

/** The metal as a lamp at its side shows it: steel of one tone, told by its slopes alone (Lambert's law). */
export function shadePlan(heights: Heights, perMm: number): PlanPicture {
  const { x0, x1, y0, y1 } = heights.extent;
  const columns = Math.round((x1 - x0) * perMm);
  const rows = Math.round((y1 - y0) * perMm);
  const step: Mm = 1 / perMm;
  const grey = new Uint8ClampedArray(columns * rows);
  let above = new Float32Array(columns + 1);
  const fill = (row: Float32Array, y: Mm) => {
    for (let n = 0; n <= columns; n++) row[n] = heights.heightAt(Math.min(x1, x0 + n * step), Math.max(y0, y));
  };
  fill(above, y1);
  for (let row = 0; row < rows; row++) {
    const below = new Float32Array(columns + 1);
    fill(below, y1 - (row + 1) * step);
    for (let n = 0; n < columns; n++) {
      const slopeX = (EXAGGERATED * (above[n + 1] - above[n])) / step;
      const slopeY = (EXAGGERATED * (above[n] - below[n])) / step;
      const facing = LAMP[2] - LAMP[0] * slopeX - LAMP[1] * slopeY;
      const lit = Math.max(0, facing / Math.sqrt(1 + slopeX * slopeX + slopeY * slopeY));
      grey[row * columns + n] = DARK + (BRIGHT - DARK) * lit;
    }
    above = below;
  }
  return { columns, rows, grey };
}
