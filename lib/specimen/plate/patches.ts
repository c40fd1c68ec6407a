import { clamp, keepWarm, tabulate } from "../../math";
import { columnOf, columnX, type Grid, pixelsIn, rowY } from "../../surface";
import type { Field } from "../field";
import type { FaceWork } from "../work";

/** All patches of a face: what is drawn in mm goes to each of them. */
export const patchesOf = (work: FaceWork): readonly Field[] => [work.strip, ...work.sides];

export interface Box {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
}

export const boxAround = (x: number, y: number, reachX: number, reachY = reachX): Box => ({
  x0: x - reachX,
  x1: x + reachX,
  y0: y - reachY,
  y1: y + reachY,
});

/** Visits the pixels of a box on every patch of the face. */
export function forEachPlatePixel(
  work: FaceWork,
  box: Box,
  visit: (field: Field, k: number, x: number, y: number) => void,
): void {
  keepWarm(visit);
  for (const field of patchesOf(work)) {
    const { grid } = field;
    const { i0, i1, j0, j1 } = pixelsIn(grid, box);
    for (let j = j0; j <= j1; j++) {
      const y = rowY(grid, j);
      for (let i = i0, k = j * grid.columns + i0; i <= i1; i++, k++) visit(field, k, columnX(grid, i), y);
    }
  }
}

/** Value of a line along the strip at x, between its columns. */
function alongStrip(work: FaceWork, line: Float32Array, x: number): number {
  const place = clamp(columnOf(work.strip.grid, x), 0, line.length - 1.001);
  const i = place | 0;
  return line[i] + (place - i) * (line[i + 1] - line[i]);
}

/** A line along the strip, brought to the columns of another patch. */
export function lineFor(work: FaceWork, grid: Grid, line: Float32Array): Float32Array {
  if (grid === work.strip.grid) return line;
  return tabulate(grid.columns, (i) => alongStrip(work, line, columnX(grid, i)));
}

/** The patch that holds (x, y), or null off the plate. */
export function patchAt(work: FaceWork, x: number, y: number): Field | null {
  for (const field of patchesOf(work)) {
    const { grid } = field;
    const i = (x - grid.x0) * grid.perMm;
    const j = (y - grid.y0) * grid.perMm;
    if (i >= 0 && j >= 0 && i < grid.columns && j < grid.rows) return field;
  }
  return null;
}
