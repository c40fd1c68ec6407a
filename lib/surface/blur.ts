import { copiedGrid, unsetFloatGrid } from "./grid-room";

/**
 * Running box mean, repeated; radii in pixels, rounded, 0 leaves that direction alone. At the border the outermost value
 * continues. Two or three passes come near a Gaussian. Returns a new array.
 */
export function boxBlur(
  values: Float32Array,
  columns: number,
  rows: number,
  radiusX: number,
  radiusY: number,
  passes = 2,
): Float32Array {
  const reachX = Math.max(0, Math.round(radiusX));
  const reachY = Math.max(0, Math.round(radiusY));
  let from = copiedGrid(values);
  let to = unsetFloatGrid(values.length);
  for (let pass = 0; pass < passes; pass++) {
    if (reachX > 0) {
      blurRows(from, to, columns, rows, reachX);
      [from, to] = [to, from];
    }
    if (reachY > 0) {
      blurColumns(from, to, columns, rows, reachY);
      [from, to] = [to, from];
    }
  }
  return from;
}

function blurRows(from: Float32Array, to: Float32Array, columns: number, rows: number, reach: number): void {
  const share = 1 / (2 * reach + 1);
  const last = columns - 1;
  for (let j = 0, start = 0; j < rows; j++, start += columns) {
    let sum = 0;
    for (let i = -reach; i <= reach; i++) sum += from[start + (i < 0 ? 0 : i > last ? last : i)];
    for (let i = 0; i < columns; i++) {
      to[start + i] = sum * share;
      const leaves = i - reach;
      const enters = i + reach + 1;
      sum += from[start + (enters > last ? last : enters)] - from[start + (leaves < 0 ? 0 : leaves)];
    }
  }
}

function blurColumns(from: Float32Array, to: Float32Array, columns: number, rows: number, reach: number): void {
  const share = 1 / (2 * reach + 1);
  const last = rows - 1;
  const sums = new Float64Array(columns);
  for (let j = -reach; j <= reach; j++) {
    const start = (j < 0 ? 0 : j > last ? last : j) * columns;
    for (let i = 0; i < columns; i++) sums[i] += from[start + i];
  }
  for (let j = 0; j < rows; j++) {
    const start = j * columns;
    const leaves = Math.max(0, j - reach) * columns;
    const enters = Math.min(last, j + reach + 1) * columns;
    for (let i = 0; i < columns; i++) {
      to[start + i] = sums[i] * share;
      sums[i] += from[enters + i] - from[leaves + i];
    }
  }
}
