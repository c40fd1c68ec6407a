import type { FilletPlate } from "../weld";
import { BRUSHING_BLOCK } from "./brushing";
import { type Grid, rowY } from "./grid";
import { gridsOf, type Patch, type Surface, TURNED_STRIP_WIDTH } from "./surface";

/**
 * A fillet turned by 45 degrees about its length, so that one of its plates lies square to the eye: y mm from the corner along
 * that plate (as y of a fillet, positive towards the base plate), heights square to it. Where the other plate hides something
 * the highest is seen.
 */
export function turnedFillet(surface: Surface, plate: FilletPlate): Surface {
  const sign = plate === "base" ? 1 : -1;
  const grids = gridsOf(plate);
  // as long as the surface that is turned
  const gridFor = (patch: Patch, { y0, rows }: Grid): Grid => ({ ...patch.grid, y0, rows });
  return {
    face: surface.face,
    strip: turned(surface.strip, gridFor(surface.strip, grids.strip), sign),
    plate: turned(surface.plate, gridFor(surface.plate, grids.plate), sign),
  };
}

/** Nearer to the corner than this the other plate is in the way, mm: it is not quite even. */
const EDGE = 0.3;
/** Nothing of the surface lies here: the top of the plate that stands up. */
const NOWHERE = -1;

function turned(patch: Patch, grid: Grid, sign: 1 | -1): Patch {
  const size = grid.columns * grid.rows;
  const height = new Float32Array(size);
  const albedo = new Uint8Array(3 * size);
  const finish = new Uint8Array(3 * size);
  const row = new Float32Array(grid.rows);
  const top = new Float32Array(grid.rows);
  const source = new Float32Array(size);
  for (let i = 0; i < grid.columns; i++) {
    lookAlong(patch, grid, sign, i, row, top);
    for (let j = 0; j < grid.rows; j++) {
      const k = j * grid.columns + i;
      height[k] = top[j];
      source[k] = row[j];
      const from = Math.max(0, Math.min(patch.grid.rows - 2, Math.floor(row[j])));
      const t = row[j] === NOWHERE ? 0 : row[j] - from;
      const a = 3 * (from * patch.grid.columns + i);
      const b = a + 3 * patch.grid.columns;
      const light = row[j] === NOWHERE ? 0.3 : 1;
      for (let c = 0; c < 3; c++) {
        albedo[3 * k + c] = light * (patch.albedo[a + c] + t * (patch.albedo[b + c] - patch.albedo[a + c]));
        finish[3 * k + c] = patch.finish[a + c] + t * (patch.finish[b + c] - patch.finish[a + c]);
      }
    }
  }
  return { grid, height, albedo, finish, brushing: turnedBrushing(patch, grid, source) };
}

/** For every row of one turned column the row of the patch that is seen there, and how high it lies. */
function lookAlong(patch: Patch, grid: Grid, sign: 1 | -1, i: number, row: Float32Array, top: Float32Array): void {
  row.fill(NOWHERE);
  top.fill(Number.NEGATIVE_INFINITY);
  const { columns, rows } = patch.grid;
  const across = (j: number) => (sign * patch.height[j * columns + i] + rowY(patch.grid, j)) / Math.SQRT2;
  const over = (j: number) => (patch.height[j * columns + i] - sign * rowY(patch.grid, j)) / Math.SQRT2;
  let y0 = across(0);
  let h0 = over(0);
  for (let j = 1; j < rows; j++) {
    const y1 = across(j);
    const h1 = over(j);
    const from = Math.max(0, Math.ceil((Math.min(y0, y1) - grid.y0) * grid.perMm - 0.5));
    const to = Math.min(grid.rows - 1, Math.floor((Math.max(y0, y1) - grid.y0) * grid.perMm - 0.5));
    for (let n = from; n <= to; n++) {
      const t = y1 === y0 ? 0 : (rowY(grid, n) - y0) / (y1 - y0);
      const h = h0 + t * (h1 - h0);
      if (h <= top[n]) continue;
      top[n] = h;
      row[n] = j - 1 + t;
    }
    y0 = y1;
    h0 = h1;
  }
  // the other plate is seen on its edge, and no higher than the fine strip reaches
  for (let n = 0; n < grid.rows; n++) {
    if (row[n] === NOWHERE || sign * rowY(grid, n) < EDGE) row[n] = NOWHERE;
    top[n] = row[n] === NOWHERE ? TURNED_STRIP_WIDTH : Math.min(top[n], TURNED_STRIP_WIDTH);
  }
}

/** Directions of brushing seen square to the plate, where they are no longer foreshortened. */
function turnedBrushing(patch: Patch, grid: Grid, source: Float32Array): Patch["brushing"] {
  const columns = Math.ceil(grid.columns / BRUSHING_BLOCK);
  const rows = Math.ceil(grid.rows / BRUSHING_BLOCK);
  const values = new Uint8Array(2 * columns * rows).fill(128);
  for (let j = 0, n = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++, n += 2) {
      const at = Math.min(grid.rows - 1, j * BRUSHING_BLOCK + 2) * grid.columns;
      const row = source[at + Math.min(grid.columns - 1, i * BRUSHING_BLOCK + 2)];
      if (row === NOWHERE) continue;
      const from = 2 * (Math.floor(row / BRUSHING_BLOCK) * patch.brushing.columns + i);
      const angle = 0.5 * Math.atan2(patch.brushing.values[from + 1] - 128, patch.brushing.values[from] - 128);
      const turnedAngle = 2 * Math.atan2(Math.SQRT2 * Math.sin(angle), Math.cos(angle));
      values[n] = Math.round(128 + 127 * Math.cos(turnedAngle));
      values[n + 1] = Math.round(128 + 127 * Math.sin(turnedAngle));
    }
  }
  return { columns, rows, values };
}
