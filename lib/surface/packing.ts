import type { Mm } from "../math";
import type { Patch } from "./surface";

/** Blocks of a packed surface, whole or in part: heights, brushing and lengths as bytes, and the file that they stand in. */

const STEP_MM = 0.002;
const HEADER = 8;

/** One file: four bytes that say what it is, a version, a small number of the owner's, and blocks with their lengths. */
export function packBlocks(magic: number, version: number, tag: number, blocks: readonly Uint8Array[]): Uint8Array {
  const size = blocks.reduce((sum, block) => sum + 4 + block.length, HEADER);
  const bytes = new Uint8Array(size);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, magic);
  view.setUint16(4, version);
  view.setUint16(6, tag);
  let at = HEADER;
  for (const block of blocks) {
    view.setUint32(at, block.length);
    bytes.set(block, at + 4);
    at += 4 + block.length;
  }
  return bytes;
}

/** The blocks of such a file, in place; throws on another magic number, another version or a cut-off file, naming `what`. */
export function unpackBlocks(
  bytes: Uint8Array,
  magic: number,
  version: number,
  what: string,
): { readonly tag: number; readonly blocks: readonly Uint8Array[] } {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < HEADER || view.getUint32(0) !== magic) throw new Error(`not a ${what}`);
  if (view.getUint16(4) !== version) throw new Error(`${what} of version ${view.getUint16(4)}`);
  const blocks: Uint8Array[] = [];
  for (let at = HEADER; at < bytes.length; ) {
    const length = view.getUint32(at);
    if (at + 4 + length > bytes.length) throw new Error(`${what} is cut off`);
    blocks.push(bytes.subarray(at + 4, at + 4 + length));
    at += 4 + length;
  }
  return { tag: view.getUint16(6), blocks };
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

export function packHeights(heights: Float32Array, columns: number): Uint8Array {
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

export function unpackHeights(bytes: Uint8Array, heights: Float32Array, columns: number): void {
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
export function packLength(length: Mm): Uint8Array {
  const bytes = new Uint8Array(4);
  new DataView(bytes.buffer).setInt32(0, Math.round(1000 * length));
  return bytes;
}

export function unpackLength(bytes: Uint8Array): Mm {
  if (bytes.length !== 4) throw new Error(`length block of ${bytes.length} bytes where 4 belong`);
  return new DataView(bytes.buffer, bytes.byteOffset).getInt32(0) / 1000;
}

export function packBrushing(brushing: Patch["brushing"]): Uint8Array {
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

export function unpackBrushing(bytes: Uint8Array, fullColumns: number, fullRows: number): Patch["brushing"] {
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
