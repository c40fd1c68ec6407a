import { keepWarm } from "../math";
import type { Grid } from "./grid";
import { floatGrid, unsetFloatGrid } from "./grid-room";
import { addNoiseRow, type NoisePlane, noisePlane } from "./noise-plane";
import { addTileRow, noiseTile, placeOnTile } from "./noise-tile";
import { type Raster, rasterOver, upsampled, type WriteRow } from "./raster";

/** Coarse samples per wavelength: with cubic interpolation more cannot be told apart by eye. The finer octaves are weaker, and cost most. */
const SAMPLES_PER_WAVE = { first: 3.2, finer: 2.7 };
/** An octave whose coarse samples would lie closer than this, mm, and all finer ones are taken from a tile. */
const FROM_TILE = 0.36;

/** Rows of a grid, mm. */
type Rows = readonly [from: number, to: number];

/** First and last + 1 row of a grid between two mm. */
export function rowsBetween(grid: Grid, [from, to]: Rows): { first: number; end: number } {
  return {
    first: Math.max(0, Math.floor((from - grid.y0) * grid.perMm)),
    end: Math.min(grid.rows, Math.ceil((to - grid.y0) * grid.perMm)),
  };
}

/**
 * Fractal gradient noise over a whole grid, wavelengths in mm along x and across y; equal waves turn with every octave
 * to hide the lattice. Grids of any resolution and place get the same surface: each octave is worked out on its own coarse
 * lattice anchored at the origin, takes over what is coarser by separable Catmull-Rom, and only the finest of them is brought up
 * to the pixels; what is finer still is taken from a tile. Grids must begin at whole pixels, so many per mm that four times 1/4
 * mm is whole too. With `rows` [from, to] in mm only these rows are filled and the rest stays 0.
 */
export function noiseField(
  grid: Grid,
  waveX: number,
  waveY: number,
  seed: number,
  octaves = 1,
  gain = 0.5,
  rows?: Rows,
): Float32Array {
  const out = unsetFloatGrid(grid.columns * grid.rows);
  const { first, end } = rows ? rowsBetween(grid, rows) : { first: 0, end: grid.rows };
  if (first >= end) return out.fill(0);
  out.fill(0, 0, first * grid.columns).fill(0, end * grid.columns);
  const write = noiseRows(grid, waveX, waveY, seed, octaves, gain, rows);
  for (let j = first; j < end; j++) write(j, out, j * grid.columns);
  return out;
}

/**
 * The same noise row by row: each call writes one row of the grid, for those who need no plane of it. Rows outside `rows` may not be asked for.
 */
export function noiseRows(
  grid: Grid,
  waveX: number,
  waveY: number,
  seed: number,
  octaves = 1,
  gain = 0.5,
  rows?: Rows,
): WriteRow {
  const { first, end } = rows ? rowsBetween(grid, rows) : { first: 0, end: grid.rows };
  const step = 1 / grid.perMm;
  const pixels: Raster = {
    columns: grid.columns,
    rows: Math.max(0, end - first),
    left: grid.x0 * grid.perMm + 0.5,
    low: grid.y0 * grid.perMm + first + 0.5,
    stepX: step,
    stepY: step,
  };
  let total = 0;
  for (let n = 0; n < octaves; n++) total += gain ** n;
  const stepOf = (wave: number, n: number) =>
    wave / 2.02 ** n / (n === 0 ? SAMPLES_PER_WAVE.first : SAMPLES_PER_WAVE.finer);
  const stepsX = Array.from({ length: octaves }, (_, n) => stepOf(waveX, n));
  const stepsY = Array.from({ length: octaves }, (_, n) => stepOf(waveY, n));
  const finest = stepsX.findIndex((step, n) => Math.min(step, stepsY[n]) < FROM_TILE);
  const coarse = finest < 0 ? octaves : finest;
  // rasters are planned from the finest down, since each must reach beyond the next finer one
  const rasters: Raster[] = [];
  let covered = pixels;
  for (let n = coarse - 1; n >= 0; n--) {
    covered = rasterOver(covered, stepsX[n], stepsY[n]);
    rasters[n] = covered;
  }
  const planes = rasters.map((raster, n) =>
    noisePlane(raster, waveX / 2.02 ** n, waveY / 2.02 ** n, n, seed + n * 101, gain ** n / total),
  );
  const write = coarseRows(rasters, planes, pixels);
  if (coarse === octaves) return keepWarm((j, into, at) => write(j - first, into, at));
  const tiled = Array.from({ length: octaves - coarse }, (_, m) => coarse + m).map((n) => ({
    waveX: waveX / 2.02 ** n,
    waveY: waveY / 2.02 ** n,
    octave: n,
    amplitude: gain ** n / total,
  }));
  const tile = noiseTile(tiled, grid.perMm);
  const start = placeOnTile(tile, grid, seed + coarse * 101);
  return keepWarm((j, into, at) => {
    write(j - first, into, at);
    addTileRow(tile, start.row + j, start.column, into, at, grid.columns);
  });
}

/** What the octaves on coarse rasters come to on the pixels. */
function coarseRows(rasters: readonly Raster[], planes: readonly NoisePlane[], pixels: Raster): WriteRow {
  const clear: WriteRow = (_, into, at) => into.fill(0, at, at + pixels.columns);
  let write = clear;
  for (let n = 0; n < rasters.length; n++) {
    const raster = rasters[n];
    const { columns, rows } = raster;
    const values = n > 0 ? unsetFloatGrid(columns * rows) : floatGrid(columns * rows);
    for (let j = 0; j < rows; j++) {
      if (n > 0) write(j, values, j * columns);
      addNoiseRow(planes[n], j, values, j * columns);
    }
    write = upsampled(raster, values, rasters[n + 1] ?? pixels);
  }
  return write;
}
