import type { Grid } from "./grid";
import { gradient2 } from "./noise";

/** Coarse samples per wavelength: with cubic interpolation more cannot be told apart by eye. */
const SAMPLES_PER_WAVE = 3.2;
/** An octave whose coarse samples would lie closer than this many pixels is worked out at every pixel. */
const COARSEST_DIRECT = 1.3;

/**
 * Fractal gradient noise over a whole grid, wavelengths in mm along x and across y; equal waves turn with every octave
 * to hide the lattice. Grids of any resolution and place get the same surface: each octave is worked out on its own coarse
 * lattice anchored at the origin, takes over what is coarser by separable Catmull-Rom, and only the finest is brought up to
 * the pixels. With `rows` [from, to] in mm only these rows are filled and the rest stays 0.
 */
export function noiseField(
  grid: Grid,
  waveX: number,
  waveY: number,
  seed: number,
  octaves = 1,
  gain = 0.5,
  rows?: readonly [from: number, to: number],
): Float32Array {
  const out = new Float32Array(grid.columns * grid.rows);
  const first = rows ? Math.max(0, Math.floor((rows[0] - grid.y0) * grid.perMm)) : 0;
  const end = rows ? Math.min(grid.rows, Math.ceil((rows[1] - grid.y0) * grid.perMm)) : grid.rows;
  if (first >= end) return out;
  let total = 0;
  for (let n = 0; n < octaves; n++) total += gain ** n;
  const pixels: Raster = {
    columns: grid.columns,
    rows: end - first,
    stepX: 1 / grid.perMm,
    stepY: 1 / grid.perMm,
    x0: grid.x0 + 0.5 / grid.perMm,
    y0: grid.y0 + (first + 0.5) / grid.perMm,
    values: out.subarray(first * grid.columns, end * grid.columns),
  };
  const stepsX = Array.from({ length: octaves }, (_, n) => waveX / 2.02 ** n / SAMPLES_PER_WAVE);
  const stepsY = Array.from({ length: octaves }, (_, n) => waveY / 2.02 ** n / SAMPLES_PER_WAVE);
  const isDirect = (n: number) => Math.max(stepsX[n], stepsY[n]) * grid.perMm < COARSEST_DIRECT;
  // rasters are planned from the finest down, since each must reach beyond the next finer one
  const rasters: Raster[] = [];
  let covered = pixels;
  for (let n = octaves - 1; n >= 0; n--) {
    if (!isDirect(n)) covered = rasterOver(covered, stepsX[n], stepsY[n]);
    rasters[n] = covered;
  }
  for (let n = 0; n < octaves; n++) {
    const raster = rasters[n];
    if (n > 0 && rasters[n - 1] !== raster) upsample(rasters[n - 1], raster);
    addOctave(raster, latticeOf(waveX / 2.02 ** n, waveY / 2.02 ** n, n, seed + n * 101, gain ** n / total));
  }
  if (rasters[octaves - 1] !== pixels) upsample(rasters[octaves - 1], pixels);
  return out;
}

/** Samples on a rectangular raster; the first one lies at (x0, y0) mm. */
interface Raster {
  readonly columns: number;
  readonly rows: number;
  readonly stepX: number;
  readonly stepY: number;
  readonly x0: number;
  readonly y0: number;
  readonly values: Float32Array;
}

/** An empty raster of whole multiples of its steps that reaches far enough for cubic interpolation at every sample of a finer one. */
function rasterOver(fine: Raster, stepX: number, stepY: number): Raster {
  const left = Math.floor(fine.x0 / stepX) - 1;
  const low = Math.floor(fine.y0 / stepY) - 1;
  const columns = Math.floor((fine.x0 + (fine.columns - 1) * fine.stepX) / stepX) + 3 - left;
  const rows = Math.floor((fine.y0 + (fine.rows - 1) * fine.stepY) / stepY) + 3 - low;
  const values = new Float32Array(columns * rows);
  return { columns, rows, stepX, stepY, x0: left * stepX, y0: low * stepY, values };
}

/** One octave: x, y in mm to the noise's own turned and stretched plane. */
interface Lattice {
  readonly xx: number;
  readonly xy: number;
  readonly yx: number;
  readonly yy: number;
  readonly offset: number;
  readonly seed: number;
  readonly amplitude: number;
}

function latticeOf(waveX: number, waveY: number, octave: number, seed: number, amplitude: number): Lattice {
  const turn = waveX === waveY ? 0.4 + 0.64 * octave : 0;
  return {
    xx: Math.cos(turn) / waveX,
    xy: Math.sin(turn) / waveX,
    yx: -Math.sin(turn) / waveY,
    yy: Math.cos(turn) / waveY,
    offset: octave * 17.3,
    seed,
    amplitude,
  };
}

function addOctave({ columns, rows, stepX, stepY, x0, y0, values }: Raster, lattice: Lattice): void {
  const { xx, xy, yx, yy, offset, seed, amplitude } = lattice;
  for (let j = 0, k = 0; j < rows; j++) {
    const u = (y0 + j * stepY) * xy + offset;
    const v = (y0 + j * stepY) * yy + offset;
    for (let i = 0; i < columns; i++, k++) {
      const x = x0 + i * stepX;
      values[k] += amplitude * gradient2(x * xx + u, x * yx + v, seed);
    }
  }
}

/** Adds a coarse raster, interpolated, to a finer one. */
function upsample(coarse: Raster, fine: Raster): void {
  const across = cubicTaps(fine.columns, fine.x0, fine.stepX, coarse.x0, coarse.stepX);
  const down = cubicTaps(fine.rows, fine.y0, fine.stepY, coarse.y0, coarse.stepY);
  const { columns: count, values: from } = coarse;
  const { columns, values: to } = fine;
  const { index, weights } = across;
  const line = new Float32Array(count);
  for (let j = 0; j < fine.rows; j++) {
    const start = down.index[j] * count;
    const w0 = down.weights[4 * j];
    const w1 = down.weights[4 * j + 1];
    const w2 = down.weights[4 * j + 2];
    const w3 = down.weights[4 * j + 3];
    for (let i = 0, q = start; i < count; i++, q++) {
      line[i] = w0 * from[q] + w1 * from[q + count] + w2 * from[q + 2 * count] + w3 * from[q + 3 * count];
    }
    for (let i = 0, k = j * columns, w = 0; i < columns; i++, k++, w += 4) {
      const c = index[i];
      to[k] +=
        weights[w] * line[c] +
        weights[w + 1] * line[c + 1] +
        weights[w + 2] * line[c + 2] +
        weights[w + 3] * line[c + 3];
    }
  }
}

/** For every fine sample the first of its four coarse ones and their Catmull-Rom weights. */
function cubicTaps(count: number, from: number, fineStep: number, origin: number, step: number) {
  const index = new Int32Array(count);
  const weights = new Float32Array(4 * count);
  for (let n = 0; n < count; n++) {
    const place = (from + n * fineStep - origin) / step;
    // rounding may put the first sample a hair before its cell
    const whole = Math.max(1, Math.floor(place));
    const t = place - whole;
    index[n] = whole - 1;
    weights[4 * n] = t * (-0.5 + t * (1 - 0.5 * t));
    weights[4 * n + 1] = 1 + t * t * (-2.5 + 1.5 * t);
    weights[4 * n + 2] = t * (0.5 + t * (2 - 1.5 * t));
    weights[4 * n + 3] = t * t * (-0.5 + 0.5 * t);
  }
  return { index, weights };
}
