/**
 * Memory for the large grids of one piece of work at a time. A face takes dozens of grids of a few megabytes. Asked of the
 * system anew for every face they are slow to come by, and each heap of them makes the engine collect garbage, which throws away
 * the machine code of functions that are made anew for every face. So their memory is kept and used again, as a stack: a scope
 * takes from the top, and all that was taken in it is free when it ends.
 */

/** Memory is kept in blocks of this many bytes; a grid lies in one block. More than the largest grid of a specimen. */
const BLOCK = 32 << 20;
/** Smaller grids than this are taken from the system. */
const LEAST = 16 << 10;
/** Grids begin at multiples of this, as lines of the processor's cache do. */
const LINE = 64;

const blocks: ArrayBuffer[] = [];
let depth = 0;
/** Top of the stack: block and place in it. */
let block = 0;
let place = 0;

/**
 * Runs `make`; what `floatGrid` and `byteGrid` gave while it ran is overwritten afterwards, so what it returns must not hold on
 * to any of it. Scopes may lie in each other. `make` must be done when it returns: no promise, no generator.
 */
export function withGridRoom<T>(make: () => T): T {
  const startBlock = block;
  const startPlace = place;
  depth++;
  try {
    return make();
  } finally {
    depth--;
    block = startBlock;
    place = startPlace;
  }
}

/** A grid of so many values, all 0: valid until the innermost `withGridRoom` around the call ends, outside of any for good. */
export function floatGrid(size: number): Float32Array {
  return unsetFloatGrid(size).fill(0);
}

/** The same with anything in it, for those who write all of it. */
export function unsetFloatGrid(size: number): Float32Array {
  const bytes = size * Float32Array.BYTES_PER_ELEMENT;
  if (!isKept(bytes)) return new Float32Array(size);
  const at = take(bytes);
  return new Float32Array(blocks[block], at, size);
}

/** A copy that holds as long as a grid from `floatGrid`. */
export function copiedGrid(values: Float32Array): Float32Array {
  const copy = unsetFloatGrid(values.length);
  copy.set(values);
  return copy;
}

/** As `floatGrid`, of bytes. */
export function byteGrid(size: number): Uint8Array {
  if (!isKept(size)) return new Uint8Array(size);
  const at = take(size);
  return new Uint8Array(blocks[block], at, size).fill(0);
}

const isKept = (bytes: number): boolean => depth > 0 && bytes >= LEAST && bytes <= BLOCK;

/** Moves the top of the stack up by so many bytes: their place in the block that is then the topmost. */
function take(bytes: number): number {
  if (place + bytes > BLOCK) {
    block++;
    place = 0;
  }
  blocks[block] ??= new ArrayBuffer(BLOCK);
  const at = place;
  place += Math.ceil(bytes / LINE) * LINE;
  return at;
}
