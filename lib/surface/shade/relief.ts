import type { Surface } from "../surface";

/** One level of the height pyramid. */
export interface Level {
  readonly z: Float32Array;
  readonly columns: number;
  readonly rows: number;
  readonly perMm: number;
  readonly x0: number;
  readonly y0: number;
}

/** Heights of a face in ever coarser levels: 0 the strip, 1 the whole plate at half its resolution, then halved again. */
export type Relief = readonly Level[];

const LEVELS = 5;

export function reliefOf(surface: Pick<Surface, "strip" | "plate">): Relief {
  const levels: Level[] = [surface.strip, surface.plate].map(({ grid, height }) => ({
    z: height,
    columns: grid.columns,
    rows: grid.rows,
    perMm: grid.perMm,
    x0: grid.x0,
    y0: grid.y0,
  }));
  while (levels.length < LEVELS) levels.push(coarser(levels[levels.length - 1]));
  return levels;
}

/** Half as many pixels each way, filtered [1 3 3 1] so that crests do not flicker between levels. */
function coarser(level: Level): Level {
  const { z, columns, rows } = level;
  const halfColumns = (columns + 1) >> 1;
  const halfRows = (rows + 1) >> 1;
  const narrow = new Float32Array(halfColumns * rows);
  for (let j = 0; j < rows; j++) {
    const start = j * columns;
    for (let i = 0; i < halfColumns; i++) {
      const c = 2 * i;
      const left = c > 0 ? c - 1 : 0;
      const right = Math.min(c + 1, columns - 1);
      const far = Math.min(c + 2, columns - 1);
      narrow[j * halfColumns + i] =
        0.125 * (z[start + left] + z[start + far]) + 0.375 * (z[start + c] + z[start + right]);
    }
  }
  const half = new Float32Array(halfColumns * halfRows);
  for (let j = 0; j < halfRows; j++) {
    const c = 2 * j;
    const above = (c > 0 ? c - 1 : 0) * halfColumns;
    const here = c * halfColumns;
    const below = Math.min(c + 1, rows - 1) * halfColumns;
    const far = Math.min(c + 2, rows - 1) * halfColumns;
    for (let i = 0; i < halfColumns; i++) {
      half[j * halfColumns + i] =
        0.125 * (narrow[above + i] + narrow[far + i]) + 0.375 * (narrow[here + i] + narrow[below + i]);
    }
  }
  return { z: half, columns: halfColumns, rows: halfRows, perMm: level.perMm / 2, x0: level.x0, y0: level.y0 };
}

/** Bilinear height at (x, y) mm; at the border the outermost value. */
export function levelAt(level: Level, x: number, y: number): number {
  const { z, columns, rows, perMm } = level;
  let fi = (x - level.x0) * perMm - 0.5;
  let fj = (y - level.y0) * perMm - 0.5;
  if (fi < 0) fi = 0;
  else if (fi > columns - 1.001) fi = columns - 1.001;
  if (fj < 0) fj = 0;
  else if (fj > rows - 1.001) fj = rows - 1.001;
  const i = fi | 0;
  const j = fj | 0;
  const u = fi - i;
  const k = j * columns + i;
  const low = z[k] + u * (z[k + 1] - z[k]);
  return low + (fj - j) * (z[k + columns] + u * (z[k + columns + 1] - z[k + columns]) - low);
}
