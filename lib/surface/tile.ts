import { SURFACE_FACES, type SurfaceFace } from "../weld";
import type { DecodedPatch } from "./codec";
import type { Grid } from "./grid";
import { packBlocks, packBrushing, packHeights, unpackBlocks, unpackBrushing, unpackHeights } from "./packing";

/**
 * A window cut out of the strip of one face, to be looked at by itself: the same metal, and nothing that says which piece it is
 * of or where it lay. Its own frame has x mm from its left edge and y mm across from its middle.
 */
export const TILE_VERSION = 1;
const MAGIC = 0x544c5449;

/** Brushing is kept at a quarter of the strip's resolution, so windows begin and end on every fourth pixel. */
export const TILE_PIXELS = 4;

/** What is cut, pixels of the strip: all whole multiples of `TILE_PIXELS`. */
export interface TileCut {
  readonly column: number;
  readonly row: number;
  readonly columns: number;
  readonly rows: number;
  /** Turned end for end in its plane, as a plate is on the bench. */
  readonly isTurned: boolean;
}

/** Albedo and finish of the window, cut, turned and compressed by the caller. */
export interface TilePictures {
  readonly albedo: Uint8Array;
  readonly finish: Uint8Array;
}

export interface DecodedTile extends DecodedPatch {
  readonly face: SurfaceFace;
  readonly grid: Grid;
}

/** Packs a window of a strip. The result is meant to be compressed as a whole. */
export function packTile(
  strip: Pick<DecodedTile, "face" | "grid" | "height" | "brushing">,
  cut: TileCut,
  { albedo, finish }: TilePictures,
): Uint8Array {
  const { columns, rows, isTurned } = cut;
  const height = new Float32Array(columns * rows);
  for (let j = 0; j < rows; j++) {
    const from = (cut.row + j) * strip.grid.columns + cut.column;
    height.set(strip.height.subarray(from, from + columns), j * columns);
  }
  if (isTurned) height.reverse();
  const blocks = [sizeBlock(columns, rows), packHeights(height, columns), albedo, finish];
  const brushing = packBrushing(cutBrushing(strip.brushing, cut));
  return packBlocks(MAGIC, TILE_VERSION, SURFACE_FACES.indexOf(strip.face), [...blocks, brushing]);
}

/** Directions are kept as doubled angles, so half a turn leaves each as it is. */
function cutBrushing(brushing: DecodedTile["brushing"], cut: TileCut): DecodedTile["brushing"] {
  const [column, row, columns, rows] = [cut.column, cut.row, cut.columns, cut.rows].map((n) => n / TILE_PIXELS);
  const values = new Uint8Array(2 * columns * rows);
  for (let j = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++) {
      const from = 2 * ((row + j) * brushing.columns + column + i);
      const to = 2 * (cut.isTurned ? (rows - 1 - j) * columns + columns - 1 - i : j * columns + i);
      values[to] = brushing.values[from];
      values[to + 1] = brushing.values[from + 1];
    }
  }
  return { columns, rows, values };
}

/** Unpacks a window; throws on a wrong magic number, another version or a cut-off file. `perMm` is that of the strip. */
export function unpackTile(bytes: Uint8Array, perMm: number): DecodedTile {
  const { tag, blocks } = unpackBlocks(bytes, MAGIC, TILE_VERSION, "packed window");
  const face = SURFACE_FACES[tag];
  if (!face) throw new Error(`unknown face ${tag}`);
  if (blocks.length !== 5) throw new Error(`packed window with ${blocks.length} blocks`);
  const [size, heights, albedo, finish, brushing] = blocks;
  const [columns, rows] = sizeOf(size);
  const height = new Float32Array(columns * rows);
  unpackHeights(heights, height, columns);
  return {
    face,
    grid: { columns, rows, perMm, x0: 0, y0: -rows / perMm / 2 },
    height,
    albedo,
    finish,
    brushing: unpackBrushing(brushing, columns, rows),
  };
}

/** The same metal at half the resolution, averaged two by two. */
export function halfOf({ grid, height }: Pick<DecodedTile, "grid" | "height">): Pick<DecodedTile, "grid" | "height"> {
  const columns = grid.columns / 2;
  const rows = grid.rows / 2;
  const half = new Float32Array(columns * rows);
  for (let j = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++) {
      const q = 2 * j * grid.columns + 2 * i;
      const below = q + grid.columns;
      half[j * columns + i] = 0.25 * (height[q] + height[q + 1] + height[below] + height[below + 1]);
    }
  }
  return { grid: { ...grid, columns, rows, perMm: grid.perMm / 2 }, height: half };
}

function sizeBlock(columns: number, rows: number): Uint8Array {
  const bytes = new Uint8Array(4);
  const view = new DataView(bytes.buffer);
  view.setUint16(0, columns);
  view.setUint16(2, rows);
  return bytes;
}

function sizeOf(bytes: Uint8Array): [columns: number, rows: number] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  return [view.getUint16(0), view.getUint16(2)];
}
