import type { Grid } from "./grid";
import { DIRECTIONS, GRADIENT_X, GRADIENT_Y, hash, SCALE_2 } from "./noise";

/**
 * The finest octaves of noise cost most and are the least looked at for themselves. They are worked out once, on a tile that
 * joins itself on all sides, and every surface takes them from a place on it that belongs to its seed. Tiles of different waves
 * differ in size, so that no two of them come round together.
 */

/** One octave: wavelengths in mm, its number, which turns equal waves, and how high it is. */
export interface TiledOctave {
  readonly waveX: number;
  readonly waveY: number;
  readonly octave: number;
  readonly amplitude: number;
}

/** Pixels of a tile, row by row. */
export interface NoiseTile {
  readonly columns: number;
  readonly rows: number;
  readonly values: Float32Array;
}

/** Whole mm along and across; across more than the strip along a weld is wide. */
const LENGTHS = [83, 89, 97, 101, 103] as const;
const HEIGHTS = [59, 61, 67] as const;
/** Where a surface begins on a tile, in steps of this many per mm: whole pixels of every grid. */
const STARTS_PER_MM = 4;

const made = new Map<string, NoiseTile>();

/** The tile of these octaves at a resolution, pixels per mm: the same for all surfaces. */
export function noiseTile(octaves: readonly TiledOctave[], perMm: number): NoiseTile {
  const key = `${perMm} ${octaves.map(({ waveX, waveY, octave, amplitude }) => `${waveX} ${waveY} ${octave} ${amplitude}`).join(" ")}`;
  const known = made.get(key);
  if (known) return known;
  const tile = drawTile(octaves, perMm);
  made.set(key, tile);
  return tile;
}

/** Where on the tile a grid's first pixel lies for a seed. */
export function placeOnTile({ columns, rows }: NoiseTile, grid: Grid, seed: number): { column: number; row: number } {
  const perStart = grid.perMm / STARTS_PER_MM;
  const along = Math.round(grid.x0 * grid.perMm + perStart * (hash(1, 0, seed) % Math.round(columns / perStart)));
  const across = Math.round(grid.y0 * grid.perMm + perStart * (hash(2, 0, seed) % Math.round(rows / perStart)));
  return { column: wrapped(along, columns), row: wrapped(across, rows) };
}

const wrapped = (place: number, size: number): number => ((place % size) + size) % size;

/** Adds `count` pixels of row `row` of a tile, from `column` on, to what `into` holds from `at` on. */
export function addTileRow(
  { columns, rows, values }: NoiseTile,
  row: number,
  column: number,
  into: Float32Array,
  at: number,
  count: number,
): void {
  const from = (row % rows) * columns;
  for (let done = 0, first = column; done < count; first = 0) {
    const length = Math.min(columns - first, count - done);
    const source = from + first;
    const target = at + done;
    for (let n = 0; n < length; n++) into[target + n] += values[source + n];
    done += length;
  }
}

function drawTile(octaves: readonly TiledOctave[], perMm: number): NoiseTile {
  const [{ waveX, waveY }] = octaves;
  const seed = hash(Math.round(1000 * waveX), Math.round(1000 * waveY), octaves.length);
  const isEven = octaves.every((one) => one.waveX === one.waveY);
  const length = LENGTHS[seed % LENGTHS.length];
  const height = isEven ? length : HEIGHTS[seed % HEIGHTS.length];
  const columns = length * perMm;
  const rows = height * perMm;
  const values = new Float32Array(columns * rows);
  for (const [n, octave] of octaves.entries())
    addOctave({ columns, rows, values }, octave, length, height, perMm, seed + 101 * n);
  return { columns, rows, values };
}

/** Directions in which a lattice can be turned and still join itself round a square tile: whole numbers along and across. */
const TURNS = [
  [2, 1],
  [1, 3],
  [3, 2],
  [1, 4],
] as const;

/** Adds gradient noise whose lattice comes round with the tile; the waves are stretched by a part of a cell so that it can. */
function addOctave(
  { columns, rows, values }: NoiseTile,
  { waveX, waveY, octave, amplitude }: TiledOctave,
  length: number,
  height: number,
  perMm: number,
  seed: number,
): void {
  const [a, b] = waveX === waveY ? TURNS[octave % TURNS.length] : [1, 0];
  const stretch = Math.sqrt(a * a + b * b);
  const cellsX = Math.max(1, Math.round(length / (waveX * stretch)));
  const cellsY = Math.max(1, Math.round(height / (waveY * stretch)));
  const directions = Uint8Array.from(
    { length: cellsX * cellsY },
    (_, n) => hash(n % cellsX, Math.floor(n / cellsX), seed) & (DIRECTIONS - 1),
  );
  const slopesX = Float64Array.from(directions, (direction) => GRADIENT_X[direction] * amplitude * SCALE_2);
  const slopesY = Float64Array.from(directions, (direction) => GRADIENT_Y[direction] * amplitude * SCALE_2);
  for (let j = 0, k = 0; j < rows; j++) {
    const y = ((j + 0.5) / perMm) * (cellsY / height);
    for (let i = 0; i < columns; i++, k++) {
      const x = ((i + 0.5) / perMm) * (cellsX / length);
      const u = a * x + b * y;
      const v = a * y - b * x;
      const iu = Math.floor(u);
      const iv = Math.floor(v);
      const du = u - iu;
      const dv = v - iv;
      const left = wrapped(iu, cellsX);
      const right = left + 1 === cellsX ? 0 : left + 1;
      const near = wrapped(iv, cellsY) * cellsX;
      const far = wrapped(iv + 1, cellsY) * cellsX;
      const nearLeft = slopesX[near + left] * du + slopesY[near + left] * dv;
      const nearRight = slopesX[near + right] * (du - 1) + slopesY[near + right] * dv;
      const farLeft = slopesX[far + left] * du + slopesY[far + left] * (dv - 1);
      const farRight = slopesX[far + right] * (du - 1) + slopesY[far + right] * (dv - 1);
      values[k] += between(between(nearLeft, nearRight, du), between(farLeft, farRight, du), dv);
    }
  }
}

const between = (from: number, to: number, t: number): number =>
  from + t * t * t * (t * (t * 6 - 15) + 10) * (to - from);
