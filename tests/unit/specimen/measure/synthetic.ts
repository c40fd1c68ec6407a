import type { Finished } from "../../../../lib/specimen/measure";
import { columnX, type Grid, rowY } from "../../../../lib/surface";

/** 60 mm of strip at the product's own resolution. */
export const GRID: Grid = { columns: 480, rows: 416, perMm: 8, x0: 0, y0: -26 };

/** A finished face whose height is an exact formula; its toes lie at -toe and +toe. */
export function faceOf(height: (x: number, y: number) => number, toe = 9): Finished {
  const z = new Float32Array(GRID.columns * GRID.rows);
  for (let j = 0, k = 0; j < GRID.rows; j++)
    for (let i = 0; i < GRID.columns; i++, k++) z[k] = height(columnX(GRID, i), rowY(GRID, j));
  return {
    strip: { grid: GRID, z },
    toeMinus: new Float32Array(GRID.columns).fill(-toe),
    toePlus: new Float32Array(GRID.columns).fill(toe),
  };
}

/** Plates that both rise away from the weld (angular distortion), plate B lower by a step. */
export const distorted = (degrees: number, step: number) => (y: number) =>
  Math.tan((degrees * Math.PI) / 180) * Math.abs(y) - (y < 0 ? step : 0);

/** A cap of parabolic section between the toes at +-toe. */
export const parabola = (y: number, toe: number, height: number) =>
  Math.abs(y) < toe ? height * (1 - (y / toe) ** 2) : 0;
