import { clamp, keepWarm } from "../math";

/** A regular grid of square pixels over part of a face. Pixel (i, j) has its centre at x0 + (i + 0.5) / perMm, y0 + (j + 0.5) / perMm. */
export interface Grid {
  readonly columns: number;
  readonly rows: number;
  /** Pixels per mm. */
  readonly perMm: number;
  /** Outer corner of the first pixel, mm. */
  readonly x0: number;
  readonly y0: number;
}

export const columnX = (grid: Grid, i: number): number => grid.x0 + (i + 0.5) / grid.perMm;
export const rowY = (grid: Grid, j: number): number => grid.y0 + (j + 0.5) / grid.perMm;
/** Fractional column of x: whole at a pixel's centre. */
export const columnOf = (grid: Grid, x: number): number => (x - grid.x0) * grid.perMm - 0.5;
export const rowOf = (grid: Grid, y: number): number => (y - grid.y0) * grid.perMm - 0.5;
/** Nearest column, bounded to the grid. */
export const nearestColumn = (grid: Grid, x: number): number =>
  clamp(Math.round(columnOf(grid, x)), 0, grid.columns - 1);
export const nearestRow = (grid: Grid, y: number): number => clamp(Math.round(rowOf(grid, y)), 0, grid.rows - 1);

/** Bilinear sample at (x, y) mm; outside the grid the border value. */
export function sampleAt(grid: Grid, values: Float32Array, x: number, y: number): number {
  const { columns, rows } = grid;
  const fi = clamp(columnOf(grid, x), 0, columns - 1.001);
  const fj = clamp(rowOf(grid, y), 0, rows - 1.001);
  const i = fi | 0;
  const j = fj | 0;
  const u = fi - i;
  const k = j * columns + i;
  const low = values[k] + u * (values[k + 1] - values[k]);
  const high = values[k + columns] + u * (values[k + columns + 1] - values[k + columns]);
  return low + (fj - j) * (high - low);
}

/** First and last column and row of the pixels whose centres lie in or next to a box given in mm. */
export function pixelsIn(
  grid: Grid,
  box: { x0: number; x1: number; y0: number; y1: number },
): { i0: number; i1: number; j0: number; j1: number } {
  return {
    i0: Math.max(0, Math.floor(columnOf(grid, box.x0))),
    i1: Math.min(grid.columns - 1, Math.ceil(columnOf(grid, box.x1))),
    j0: Math.max(0, Math.floor(rowOf(grid, box.y0))),
    j1: Math.min(grid.rows - 1, Math.ceil(rowOf(grid, box.y1))),
  };
}

/** Visits the pixels whose centres lie in or next to a box given in mm. */
export function forEachPixel(
  grid: Grid,
  box: { x0: number; x1: number; y0: number; y1: number },
  visit: (k: number, x: number, y: number, i: number, j: number) => void,
): void {
  keepWarm(visit);
  const { i0, i1, j0, j1 } = pixelsIn(grid, box);
  for (let j = j0; j <= j1; j++) {
    const y = rowY(grid, j);
    for (let i = i0, k = j * grid.columns + i0; i <= i1; i++, k++) visit(k, columnX(grid, i), y, i, j);
  }
}
