import type { Mm } from "../math";
import type { SurfaceFace } from "../weld";
import { SURFACE_FACES } from "../weld";
import type { Grid } from "./grid";
import { gridsOf, type Patch, type Surface } from "./surface";

/**
 * The transported form of one face. Heights are exact to half a step of 2 micrometres: median predictor (LOCO-I,
 * Weinberger, Seroussi and Sapiro 1996), residuals folded to unsigned and split into byte planes, so that any
 * general-purpose compressor does well on them. Materials travel as ordinary pictures, made and read by the caller.
 */
export const CODEC_VERSION = 1;
const MAGIC = 0x544c4e53;
const STEP_MM = 0.002;

/** A picture of three channels per pixel, compressed by the caller: a colour, or three shares that have nothing to do with each other. */
export type EncodeImage = (
  rgb: Uint8Array,
  columns: number,
  rows: number,
  content: "colour" | "shares",
) => Promise<Uint8Array>;

export interface DecodedPatch {
  readonly height: Float32Array;
  /** The compressed pictures as they came. */
  readonly albedo: Uint8Array;
  readonly finish: Uint8Array;
  readonly brushing: Patch["brushing"];
}

export interface DecodedFace {
  readonly face: SurfaceFace;
  /** Distance from this face's zero to that of the face on the other side of the plate, mm; null where that is not known, or there is none. */
  readonly facesApart: Mm | null;
  readonly strip: DecodedPatch;
  readonly plate: DecodedPatch;
}

interface Grids {
  readonly strip: Grid;
  readonly plate: Grid;
}

/** First row of the plate patch that the strip covers, and the first one beyond it. */
function coveredRows({ strip, plate }: Grids): { from: number; to: number } {
  const from = Math.round((strip.y0 - plate.y0) * plate.perMm);
  return { from, to: from + strip.rows / 2 };
}

/** Packs a face, with how far the plate's other face lies from it. The result is meant to be compressed as a whole. */
export async function encodeFace(
  surface: Surface,
  encodeImage: EncodeImage,
  facesApart: Mm | null = null,
): Promise<Uint8Array> {
  const { strip, plate } = surface;
  const { columns } = plate.grid;
  const covered = coveredRows({ strip: strip.grid, plate: plate.grid });
  const blocks = [
    packHeights(strip.height, strip.grid.columns),
    packHeights(plate.height.subarray(0, covered.from * columns), columns),
    packHeights(plate.height.subarray(covered.to * columns), columns),
    ...(await Promise.all(
      [strip, plate].flatMap((patch) => [
        encodeImage(patch.albedo, patch.grid.columns, patch.grid.rows, "colour"),
        encodeImage(patch.finish, patch.grid.columns, patch.grid.rows, "shares"),
      ]),
    )),
    packBrushing(strip.brushing),
    packBrushing(plate.brushing),
    ...(facesApart === null ? [] : [packLength(facesApart)]),
  ];
  const size = blocks.reduce((sum, block) => sum + 4 + block.length, 8);
  const bytes = new Uint8Array(size);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, MAGIC);
  view.setUint16(4, CODEC_VERSION);
  view.setUint16(6, SURFACE_FACES.indexOf(surface.face));
  let at = 8;
  for (const block of blocks) {
    view.setUint32(at, block.length);
    bytes.set(block, at + 4);
    at += 4 + block.length;
  }
  return bytes;
}

/** Unpacks a face; throws on a wrong magic number, another version or a cut-off file. */
export function decodeFace(bytes: Uint8Array): DecodedFace {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < 8 || view.getUint32(0) !== MAGIC) throw new Error("not a packed surface");
  if (view.getUint16(4) !== CODEC_VERSION) throw new Error(`packed surface of version ${view.getUint16(4)}`);
  const face = SURFACE_FACES[view.getUint16(6)];
  if (!face) throw new Error(`unknown face ${view.getUint16(6)}`);
  const blocks: Uint8Array[] = [];
  for (let at = 8; at < bytes.length; ) {
    const length = view.getUint32(at);
    if (at + 4 + length > bytes.length) throw new Error("packed surface is cut off");
    blocks.push(bytes.subarray(at + 4, at + 4 + length));
    at += 4 + length;
  }
  // faces packed before thickness was measured, and those of fillets, end with the brushing
  if (blocks.length !== 9 && blocks.length !== 10) throw new Error(`packed surface with ${blocks.length} blocks`);
  const [stripHeights, before, after, stripAlbedo, stripFinish, plateAlbedo, plateFinish, stripBrush, plateBrush] =
    blocks;
  const apart = blocks.length === 10 ? blocks[9] : null;
  const grids = gridsOf(face);
  const { columns } = grids.plate;
  const covered = coveredRows(grids);
  const strip = new Float32Array(grids.strip.columns * grids.strip.rows);
  unpackHeights(stripHeights, strip, grids.strip.columns);
  const plate = new Float32Array(columns * grids.plate.rows);
  unpackHeights(before, plate.subarray(0, covered.from * columns), columns);
  unpackHeights(after, plate.subarray(covered.to * columns), columns);
  halveStrip(strip, plate, grids);
  return {
    face,
    facesApart: apart && unpackLength(apart),
    strip: {
      height: strip,
      albedo: stripAlbedo,
      finish: stripFinish,
      brushing: unpackBrushing(stripBrush, grids.strip.columns, grids.strip.rows),
    },
    plate: {
      height: plate,
      albedo: plateAlbedo,
      finish: plateFinish,
      brushing: unpackBrushing(plateBrush, grids.plate.columns, grids.plate.rows),
    },
  };
}

/** Fills the covered rows of the plate with the strip, averaged two by two. */
function halveStrip(strip: Float32Array, plate: Float32Array, grids: Grids): void {
  const wide = grids.strip.columns;
  const { columns } = grids.plate;
  const { from } = coveredRows(grids);
  for (let j = 0; j < grids.strip.rows / 2; j++) {
    for (let i = 0, k = (from + j) * columns; i < columns; i++, k++) {
      const q = 2 * j * wide + 2 * i;
      plate[k] = 0.25 * (strip[q] + strip[q + 1] + strip[q + wide] + strip[q + wide + 1]);
    }
  }
}

/** Median of left, above, and left + above - corner: the predictor that follows edges. */
function predict(values: Int16Array, columns: number, k: number, i: number): number {
  const above = k >= columns ? values[k - columns] : 0;
  if (i === 0) return above;
  const left = values[k - 1];
  if (k < columns) return left;
  const corner = values[k - columns - 1];
  const high = left > above ? left : above;
  const low = left > above ? above : left;
  return corner >= high ? low : corner <= low ? high : left + above - corner;
}

function packHeights(heights: Float32Array, columns: number): Uint8Array {
  const size = heights.length;
  const steps = new Int16Array(size);
  for (let k = 0; k < size; k++) steps[k] = Math.round(heights[k] / STEP_MM);
  const bytes = new Uint8Array(2 * size);
  for (let k = 0, i = 0; k < size; k++, i = i + 1 === columns ? 0 : i + 1) {
    const residual = ((steps[k] - predict(steps, columns, k, i)) << 16) >> 16;
    const folded = (residual << 1) ^ (residual >> 31);
    bytes[k] = folded & 0xff;
    bytes[size + k] = (folded >> 8) & 0xff;
  }
  return bytes;
}

function unpackHeights(bytes: Uint8Array, heights: Float32Array, columns: number): void {
  const size = heights.length;
  if (bytes.length !== 2 * size) throw new Error(`height block of ${bytes.length} bytes where ${2 * size} belong`);
  const steps = new Int16Array(size);
  for (let k = 0, i = 0; k < size; k++, i = i + 1 === columns ? 0 : i + 1) {
    const folded = bytes[k] | (bytes[size + k] << 8);
    const residual = (folded >>> 1) ^ -(folded & 1);
    steps[k] = predict(steps, columns, k, i) + residual;
    heights[k] = steps[k] * STEP_MM;
  }
}

/** A length in micrometres. */
function packLength(length: Mm): Uint8Array {
  const bytes = new Uint8Array(4);
  new DataView(bytes.buffer).setInt32(0, Math.round(1000 * length));
  return bytes;
}

function unpackLength(bytes: Uint8Array): Mm {
  if (bytes.length !== 4) throw new Error(`length block of ${bytes.length} bytes where 4 belong`);
  return new DataView(bytes.buffer, bytes.byteOffset).getInt32(0) / 1000;
}

function packBrushing(brushing: Patch["brushing"]): Uint8Array {
  const { columns, rows, values } = brushing;
  const bytes = new Uint8Array(4 + values.length);
  new DataView(bytes.buffer).setUint16(0, columns);
  new DataView(bytes.buffer).setUint16(2, rows);
  // neighbours are alike: differences along the row, one channel after the other, compress better
  const half = columns * rows;
  for (let channel = 0; channel < 2; channel++) {
    for (let k = 0; k < half; k++) {
      const before = k % columns === 0 ? 0 : values[2 * (k - 1) + channel];
      bytes[4 + channel * half + k] = values[2 * k + channel] - before;
    }
  }
  return bytes;
}

function unpackBrushing(bytes: Uint8Array, fullColumns: number, fullRows: number): Patch["brushing"] {
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  const columns = view.getUint16(0);
  const rows = view.getUint16(2);
  const half = columns * rows;
  if (columns > fullColumns || rows > fullRows || bytes.length !== 4 + 2 * half) {
    throw new Error(`brushing block of ${columns} x ${rows}`);
  }
  const values = new Uint8Array(2 * half);
  for (let channel = 0; channel < 2; channel++) {
    for (let k = 0; k < half; k++) {
      const before = k % columns === 0 ? 0 : values[2 * (k - 1) + channel];
      values[2 * k + channel] = bytes[4 + channel * half + k] + before;
    }
  }
  return { columns, rows, values };
}
