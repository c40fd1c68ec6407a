/** Samples on a regular raster: number (i, j) lies at ((left + i) * stepX, (low + j) * stepY) mm. */
export interface Raster {
  readonly columns: number;
  readonly rows: number;
  readonly left: number;
  readonly low: number;
  readonly stepX: number;
  readonly stepY: number;
}

/** The raster of whole multiples of its steps that reaches far enough for cubic interpolation at every sample of a finer one. */
export function rasterOver(fine: Raster, stepX: number, stepY: number): Raster {
  const left = Math.floor((fine.left * fine.stepX) / stepX) - 1;
  const low = Math.floor((fine.low * fine.stepY) / stepY) - 1;
  const columns = Math.floor(((fine.left + fine.columns - 1) * fine.stepX) / stepX) + 3 - left;
  const rows = Math.floor(((fine.low + fine.rows - 1) * fine.stepY) / stepY) + 3 - low;
  return { columns, rows, left, low, stepX, stepY };
}

/** Writes one row of a raster to `into`, beginning at `at`. */
export type WriteRow = (j: number, into: Float32Array, at: number) => void;

/** Brings the values of a coarse raster to the rows of a finer one by separable Catmull-Rom. */
export function upsampled(coarse: Raster, values: Float32Array, fine: Raster): WriteRow {
  const across = placesIn(fine.columns, fine.left, fine.stepX, coarse.left, coarse.stepX);
  const down = placesIn(fine.rows, fine.low, fine.stepY, coarse.low, coarse.stepY);
  const starts = startsOf(across.cell);
  const line = new Float64Array(coarse.columns);
  return (j, into, at) => {
    mixRows(values, down.cell[j] * coarse.columns, down.beyond[j], line);
    fillRow(line, starts, across.beyond, into, at);
  };
}

/** One line between the second and the third of four rows that begin at `from`. */
function mixRows(values: Float32Array, from: number, t: number, line: Float64Array): void {
  const count = line.length;
  const w0 = t * (-0.5 + t * (1 - 0.5 * t));
  const w1 = 1 + t * t * (-2.5 + 1.5 * t);
  const w2 = t * (0.5 + t * (2 - 1.5 * t));
  const w3 = t * t * (-0.5 + 0.5 * t);
  for (let i = 0, q = from; i < count; i++, q++) {
    line[i] = w0 * values[q] + w1 * values[q + count] + w2 * values[q + 2 * count] + w3 * values[q + 3 * count];
  }
}

/** Fills a fine row from a coarse one: a cubic for each cell, and all samples in it from that. */
function fillRow(line: Float64Array, starts: Int32Array, beyond: Float32Array, into: Float32Array, at: number): void {
  for (let c = 0; c + 1 < starts.length; c++) {
    const p0 = line[c];
    const p1 = line[c + 1];
    const p2 = line[c + 2];
    const p3 = line[c + 3];
    const slope = 0.5 * (p2 - p0);
    const bow = p0 - 2.5 * p1 + 2 * p2 - 0.5 * p3;
    const twist = 0.5 * (p3 - p0) + 1.5 * (p1 - p2);
    const end = starts[c + 1];
    for (let i = starts[c]; i < end; i++) {
      const t = beyond[i];
      into[at + i] = p1 + t * (slope + t * (bow + t * twist));
    }
  }
}

/** For every fine sample the first of its four coarse ones, and how far it lies beyond the second, 0..1. */
function placesIn(count: number, first: number, fineStep: number, origin: number, step: number) {
  const cell = new Int32Array(count);
  const beyond = new Float32Array(count);
  for (let n = 0; n < count; n++) {
    const place = ((first + n) * fineStep) / step - origin;
    // rounding may put the first sample a hair before its cell
    const whole = Math.max(1, Math.floor(place));
    cell[n] = whole - 1;
    beyond[n] = place - whole;
  }
  return { cell, beyond };
}

/** The first sample of every cell, and after the last cell the number of samples. */
function startsOf(cell: Int32Array): Int32Array {
  const cells = cell[cell.length - 1] + 1;
  const starts = new Int32Array(cells + 1);
  for (let c = 0, n = 0; c <= cells; c++) {
    while (n < cell.length && cell[n] < c) n++;
    starts[c] = n;
  }
  return starts;
}
