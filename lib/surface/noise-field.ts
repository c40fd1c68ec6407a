import type { Grid } from "./grid";
import { gradient2 } from "./noise";

/** Coarse samples per wavelength: with cubic interpolation more cannot be told apart by eye. */
const SAMPLES_PER_WAVE = 3.2;
/** An octave whose coarse samples would lie closer than this many pixels is worked out at every pixel. */
const COARSEST_DIRECT = 1.3;

/**
 * Fractal gradient noise over a whole grid, wavelengths in mm along x and across y; equal waves turn with every octave
 * to hide the lattice. Grids of any resolution and place get the same surface. Each octave lives on its own coarse
 * lattice anchored at the origin and is brought up by separable Catmull-Rom, so long waves cost next to nothing.
 * With `rows` [from, to] in mm only these rows are filled and the rest stays 0.
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
  let total = 0;
  for (let n = 0; n < octaves; n++) total += gain ** n;
  for (let n = 0; n < octaves; n++) {
    const finer = 2.02 ** n;
    const lattice = latticeOf(waveX / finer, waveY / finer, n, seed + n * 101, gain ** n / total);
    const stepX = waveX / finer / SAMPLES_PER_WAVE;
    const stepY = waveY / finer / SAMPLES_PER_WAVE;
    if (Math.max(stepX, stepY) * grid.perMm < COARSEST_DIRECT) addDirect(out, grid, lattice, first, end);
    else addUpsampled(out, grid, lattice, stepX, stepY, first, end);
  }
  return out;
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

function valueAt(lattice: Lattice, x: number, y: number): number {
  const { xx, xy, yx, yy, offset } = lattice;
  return lattice.amplitude * gradient2(x * xx + y * xy + offset, x * yx + y * yy + offset, lattice.seed);
}

function addDirect(out: Float32Array, grid: Grid, lattice: Lattice, first: number, end: number): void {
  for (let j = first; j < end; j++) {
    const y = grid.y0 + (j + 0.5) / grid.perMm;
    for (let i = 0, k = j * grid.columns; i < grid.columns; i++, k++) {
      out[k] += valueAt(lattice, grid.x0 + (i + 0.5) / grid.perMm, y);
    }
  }
}

function addUpsampled(
  out: Float32Array,
  grid: Grid,
  lattice: Lattice,
  stepX: number,
  stepY: number,
  first: number,
  end: number,
): void {
  const across = cubicTaps(grid.columns, grid.x0, grid.perMm, stepX);
  const down = cubicTaps(grid.rows, grid.y0, grid.perMm, stepY);
  const base = down.index[first];
  const coarseRows = down.index[end - 1] - base + 4;
  const { count } = across;
  const coarse = new Float32Array(count * coarseRows);
  for (let j = 0; j < coarseRows; j++) {
    const y = (down.origin + base + j) * stepY;
    for (let i = 0; i < count; i++) coarse[j * count + i] = valueAt(lattice, (across.origin + i) * stepX, y);
  }
  const line = new Float32Array(count);
  const { index, weights } = across;
  for (let j = first; j < end; j++) {
    const from = (down.index[j] - base) * count;
    const w0 = down.weights[4 * j];
    const w1 = down.weights[4 * j + 1];
    const w2 = down.weights[4 * j + 2];
    const w3 = down.weights[4 * j + 3];
    for (let i = 0, q = from; i < count; i++, q++) {
      line[i] = w0 * coarse[q] + w1 * coarse[q + count] + w2 * coarse[q + 2 * count] + w3 * coarse[q + 3 * count];
    }
    for (let i = 0, k = j * grid.columns, w = 0; i < grid.columns; i++, k++, w += 4) {
      const c = index[i];
      out[k] +=
        weights[w] * line[c] +
        weights[w + 1] * line[c + 1] +
        weights[w + 2] * line[c + 2] +
        weights[w + 3] * line[c + 3];
    }
  }
}

/** For every pixel the first of its four coarse samples (counted from `origin`) and their Catmull-Rom weights. */
function cubicTaps(pixels: number, from: number, perMm: number, step: number) {
  const origin = Math.floor((from + 0.5 / perMm) / step) - 1;
  const index = new Int32Array(pixels);
  const weights = new Float32Array(4 * pixels);
  for (let n = 0; n < pixels; n++) {
    const place = (from + (n + 0.5) / perMm) / step;
    const whole = Math.floor(place);
    const t = place - whole;
    index[n] = whole - 1 - origin;
    weights[4 * n] = t * (-0.5 + t * (1 - 0.5 * t));
    weights[4 * n + 1] = 1 + t * t * (-2.5 + 1.5 * t);
    weights[4 * n + 2] = t * (0.5 + t * (2 - 1.5 * t));
    weights[4 * n + 3] = t * t * (-0.5 + 0.5 * t);
  }
  return { origin, index, weights, count: index[pixels - 1] + 4 };
}
