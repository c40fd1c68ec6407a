import type { Grid } from "./grid";

/**
 * Gradient noise on a hashed lattice (Perlin, "Improving noise", 2002, with a hash instead of a permutation table). Nothing is
 * stored and nothing depends on the order of the calls. The functions of one point have a wavelength of 1: call
 * gradient1(x / 46, seed) for waves of 46 mm.
 */
export function hash(ix: number, iy: number, seed: number): number {
  let h = (Math.imul(seed, 0x85ebca77) + Math.imul(ix, 0x9e3779b1)) | 0;
  h = Math.imul(h ^ (h >>> 16), 0x7feb352d) + Math.imul(iy, 0xc2b2ae3d);
  h = Math.imul(h ^ (h >>> 15), 0x846ca68b);
  return (h ^ (h >>> 16)) >>> 0;
}

/** Uniform number in [0, 1) that belongs to a lattice point; whole numbers only. */
export function hash01(ix: number, iy: number, seed: number): number {
  return hash(ix, iy, seed) / 4294967296;
}

export const DIRECTIONS = 64;
export const GRADIENT_X = Float64Array.from({ length: DIRECTIONS }, (_, n) =>
  Math.cos(((n + 0.5) * 2 * Math.PI) / DIRECTIONS),
);
export const GRADIENT_Y = Float64Array.from({ length: DIRECTIONS }, (_, n) =>
  Math.sin(((n + 0.5) * 2 * Math.PI) / DIRECTIONS),
);
/** Between two lattice points the noise swings by about 1 with these factors. */
const SCALE_1 = 2.6;
export const SCALE_2 = 1.5;

const quintic = (t: number): number => t * t * t * (t * (t * 6 - 15) + 10);

/** Smooth noise along a line, wavelength 1, zero at whole x, within about -1..1. */
export function gradient1(x: number, seed: number): number {
  const i = Math.floor(x);
  const t = x - i;
  const left = (hash01(i, 7, seed) * 2 - 1) * t;
  const right = (hash01(i + 1, 7, seed) * 2 - 1) * (t - 1);
  return (left + quintic(t) * (right - left)) * SCALE_1;
}

/** Sum of octaves of gradient1, each 2.13 times as fine and `gain` as high, within about -1..1. */
export function fractal1(x: number, seed: number, octaves: number, gain = 0.55): number {
  let amplitude = 1;
  let sum = 0;
  let total = 0;
  for (let octave = 0; octave < octaves; octave++) {
    sum += amplitude * gradient1(x, seed + octave * 57);
    total += amplitude;
    amplitude *= gain;
    x = x * 2.13 + 11.7;
  }
  return (1.4 * sum) / total;
}

/** Noise that takes a random value in -1..1 at every whole x. */
export function value1(x: number, seed: number): number {
  const i = Math.floor(x);
  const t = x - i;
  const left = hash01(i, 3, seed);
  return 2 * (left + t * t * (3 - 2 * t) * (hash01(i + 1, 3, seed) - left)) - 1;
}

/** Smooth noise over a plane, wavelength 1, root mean square about 0.4. */
export function gradient2(x: number, y: number, seed: number): number {
  const ix = Math.floor(x);
  const iy = Math.floor(y);
  const u = x - ix;
  const v = y - iy;
  const a = hash(ix, iy, seed) & (DIRECTIONS - 1);
  const b = hash(ix + 1, iy, seed) & (DIRECTIONS - 1);
  const c = hash(ix, iy + 1, seed) & (DIRECTIONS - 1);
  const d = hash(ix + 1, iy + 1, seed) & (DIRECTIONS - 1);
  const nearLeft = GRADIENT_X[a] * u + GRADIENT_Y[a] * v;
  const nearRight = GRADIENT_X[b] * (u - 1) + GRADIENT_Y[b] * v;
  const farLeft = GRADIENT_X[c] * u + GRADIENT_Y[c] * (v - 1);
  const farRight = GRADIENT_X[d] * (u - 1) + GRADIENT_Y[d] * (v - 1);
  const easeU = quintic(u);
  const near = nearLeft + easeU * (nearRight - nearLeft);
  const far = farLeft + easeU * (farRight - farLeft);
  return (near + quintic(v) * (far - near)) * SCALE_2;
}

/**
 * gradient2 along one row of a grid at y mm, waves in mm: the same numbers as `gradient2(x / waveX, y / waveY, seed)` at every
 * column, in a tenth of the time, since a cell's corners are hashed once for all its columns.
 */
export function gradientRow(
  { columns, x0, perMm }: Grid,
  y: number,
  waveX: number,
  waveY: number,
  seed: number,
  into: Float64Array,
): void {
  const across = y / waveY;
  const iy = Math.floor(across);
  const v = across - iy;
  const easeV = quintic(v);
  let cell = Number.NaN;
  let a = 0;
  let b = 0;
  let c = 0;
  let d = 0;
  for (let i = 0; i < columns; i++) {
    const x = (x0 + (i + 0.5) / perMm) / waveX;
    const ix = Math.floor(x);
    if (ix !== cell) {
      cell = ix;
      a = hash(ix, iy, seed) & (DIRECTIONS - 1);
      b = hash(ix + 1, iy, seed) & (DIRECTIONS - 1);
      c = hash(ix, iy + 1, seed) & (DIRECTIONS - 1);
      d = hash(ix + 1, iy + 1, seed) & (DIRECTIONS - 1);
    }
    const u = x - ix;
    const nearLeft = GRADIENT_X[a] * u + GRADIENT_Y[a] * v;
    const nearRight = GRADIENT_X[b] * (u - 1) + GRADIENT_Y[b] * v;
    const farLeft = GRADIENT_X[c] * u + GRADIENT_Y[c] * (v - 1);
    const farRight = GRADIENT_X[d] * (u - 1) + GRADIENT_Y[d] * (v - 1);
    const easeU = quintic(u);
    const near = nearLeft + easeU * (nearRight - nearLeft);
    const far = farLeft + easeU * (farRight - farLeft);
    into[i] = (near + easeV * (far - near)) * SCALE_2;
  }
}

/** Sum of octaves of gradient2, each turned and twice as fine, `gain` as high; as strong as one octave at most. */
export function fractal2(x: number, y: number, seed: number, octaves: number, gain = 0.5): number {
  let amplitude = 1;
  let sum = 0;
  let total = 0;
  for (let octave = 0; octave < octaves; octave++) {
    sum += amplitude * gradient2(x, y, seed + octave * 101);
    total += amplitude;
    amplitude *= gain;
    const turned = x * 1.62 + y * 1.21;
    y = y * 1.62 - x * 1.21 + 5.1;
    x = turned + 17.3;
  }
  return sum / total;
}
