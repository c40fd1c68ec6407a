import { byteGrid } from "./grid-room";
import { DIRECTIONS, GRADIENT_X, GRADIENT_Y, hash, SCALE_2 } from "./noise";
import type { Raster } from "./raster";

/** One octave of gradient noise over a raster: its plane's lattice, turned and stretched, with the direction of every point. */
export interface NoisePlane {
  readonly raster: Raster;
  /** mm to the lattice, which begins at 0. */
  readonly xx: number;
  readonly xy: number;
  readonly yx: number;
  readonly yy: number;
  readonly shiftU: number;
  readonly shiftV: number;
  readonly amplitude: number;
  readonly wide: number;
  readonly directions: Uint8Array;
}

/**
 * gradient2 over a raster, waves in mm; equal waves are turned by an angle of their octave's own. The lattice is hashed once,
 * since a dozen samples share each of its points.
 */
export function noisePlane(
  raster: Raster,
  waveX: number,
  waveY: number,
  octave: number,
  seed: number,
  amplitude: number,
): NoisePlane {
  const { columns, rows, left, low, stepX, stepY } = raster;
  const turn = waveX === waveY ? 0.4 + 0.64 * octave : 0;
  const offset = octave * 17.3;
  const xx = Math.cos(turn) / waveX;
  const xy = Math.sin(turn) / waveX;
  const yx = -Math.sin(turn) / waveY;
  const yy = Math.cos(turn) / waveY;
  const xs = [left * stepX, (left + columns - 1) * stepX];
  const ys = [low * stepY, (low + rows - 1) * stepY];
  const us = xs.flatMap((x) => ys.map((y) => x * xx + y * xy + offset));
  const vs = xs.flatMap((x) => ys.map((y) => x * yx + y * yy + offset));
  // a cell of room: rounding may carry a sample over the edge
  const u0 = Math.floor(Math.min(...us)) - 1;
  const v0 = Math.floor(Math.min(...vs)) - 1;
  const wide = Math.floor(Math.max(...us)) + 3 - u0;
  const high = Math.floor(Math.max(...vs)) + 3 - v0;
  const directions = byteGrid(wide * high);
  for (let v = 0, k = 0; v < high; v++) {
    for (let u = 0; u < wide; u++, k++) directions[k] = hash(u0 + u, v0 + v, seed) & (DIRECTIONS - 1);
  }
  return { raster, xx, xy, yx, yy, shiftU: offset - u0, shiftV: offset - v0, amplitude, wide, directions };
}

/** Adds one row of the octave to what `into` holds from `at` on. */
export function addNoiseRow(plane: NoisePlane, j: number, into: Float32Array, at: number): void {
  if (plane.yx === 0) addStraightRow(plane, j, into, at);
  else addTurnedRow(plane, j, into, at);
}

/** On a lattice that is not turned a row stays between two of its lines: what belongs to a cell is worked out once for its samples. */
function addStraightRow(plane: NoisePlane, j: number, into: Float32Array, at: number): void {
  const { raster, xx, wide, directions } = plane;
  const { columns, left, stepX } = raster;
  const y = (raster.low + j) * raster.stepY;
  const u = y * plane.xy + plane.shiftU;
  const v = y * plane.yy + plane.shiftV;
  const scale = plane.amplitude * SCALE_2;
  const iv = v | 0;
  const dv = v - iv;
  const easeV = dv * dv * dv * (dv * (dv * 6 - 15) + 10);
  let cell = -1;
  let ax = 0;
  let ay = 0;
  let bx = 0;
  let by = 0;
  let cx = 0;
  let cy = 0;
  let dx = 0;
  let dy = 0;
  for (let i = 0; i < columns; i++) {
    const x = (left + i) * stepX;
    let du = x * xx + u;
    const iu = du | 0;
    du -= iu;
    if (iu !== cell) {
      cell = iu;
      const k = iv * wide + iu;
      const a = directions[k];
      const b = directions[k + 1];
      const c = directions[k + wide];
      const d = directions[k + wide + 1];
      ax = GRADIENT_X[a];
      ay = GRADIENT_Y[a] * dv;
      bx = GRADIENT_X[b];
      by = GRADIENT_Y[b] * dv;
      cx = GRADIENT_X[c];
      cy = GRADIENT_Y[c] * (dv - 1);
      dx = GRADIENT_X[d];
      dy = GRADIENT_Y[d] * (dv - 1);
    }
    const nearLeft = ax * du + ay;
    const nearRight = bx * (du - 1) + by;
    const farLeft = cx * du + cy;
    const farRight = dx * (du - 1) + dy;
    const easeU = du * du * du * (du * (du * 6 - 15) + 10);
    const near = nearLeft + easeU * (nearRight - nearLeft);
    const far = farLeft + easeU * (farRight - farLeft);
    into[at + i] += scale * (near + easeV * (far - near));
  }
}

function addTurnedRow(plane: NoisePlane, j: number, into: Float32Array, at: number): void {
  const { raster, xx, yx, wide, directions } = plane;
  const { columns, left, stepX } = raster;
  const y = (raster.low + j) * raster.stepY;
  const u = y * plane.xy + plane.shiftU;
  const v = y * plane.yy + plane.shiftV;
  const scale = plane.amplitude * SCALE_2;
  for (let i = 0; i < columns; i++) {
    const x = (left + i) * stepX;
    let du = x * xx + u;
    let dv = x * yx + v;
    const iu = du | 0;
    const iv = dv | 0;
    du -= iu;
    dv -= iv;
    const k = iv * wide + iu;
    const a = directions[k];
    const b = directions[k + 1];
    const c = directions[k + wide];
    const d = directions[k + wide + 1];
    const nearLeft = GRADIENT_X[a] * du + GRADIENT_Y[a] * dv;
    const nearRight = GRADIENT_X[b] * (du - 1) + GRADIENT_Y[b] * dv;
    const farLeft = GRADIENT_X[c] * du + GRADIENT_Y[c] * (dv - 1);
    const farRight = GRADIENT_X[d] * (du - 1) + GRADIENT_Y[d] * (dv - 1);
    const easeU = du * du * du * (du * (du * 6 - 15) + 10);
    const easeV = dv * dv * dv * (dv * (dv * 6 - 15) + 10);
    const near = nearLeft + easeU * (nearRight - nearLeft);
    const far = farLeft + easeU * (farRight - farLeft);
    into[at + i] += scale * (near + easeV * (far - near));
  }
}
