/** Pixels along one side of the tile of fine texture that repeats under a strong magnification. */
export const DETAIL_SIZE = 256;

/**
 * A tile that repeats without a seam: grain slope along x and y in red and green, slope and tone of fine scratches
 * (which run along x) in blue and alpha, each as 128 + 127 v.
 */
export function makeDetailTile(): Uint8Array {
  const tile = new Uint8Array(4 * DETAIL_SIZE * DETAIL_SIZE);
  for (let j = 0, k = 0; j < DETAIL_SIZE; j++) {
    for (let i = 0; i < DETAIL_SIZE; i++, k += 4) {
      tile[k] = byteOf(grain(i + 1, j) - grain(i - 1, j), 0.5);
      tile[k + 1] = byteOf(grain(i, j + 1) - grain(i, j - 1), 0.5);
      tile[k + 2] = byteOf(scratch(i, j + 1) - scratch(i, j - 1), 0.6);
      tile[k + 3] = byteOf(scratch(i, j), 1);
    }
  }
  return tile;
}

const byteOf = (value: number, full: number) => Math.round(128 + 127 * Math.max(-1, Math.min(1, value / full)));

const grain = (i: number, j: number) => tiledNoise(i, j, 32, 32, 1) + 0.6 * tiledNoise(i, j, 64, 64, 2);
const scratch = (i: number, j: number) => 0.6 * tiledNoise(i, j, 4, 64, 3) + 0.5 * tiledNoise(i, j, 8, 128, 4);

/** Smooth noise -1..1 on a lattice of `across` by `down` cells over the tile. */
function tiledNoise(i: number, j: number, across: number, down: number, layer: number): number {
  const x = (((i % DETAIL_SIZE) + DETAIL_SIZE) % DETAIL_SIZE) * (across / DETAIL_SIZE);
  const y = (((j % DETAIL_SIZE) + DETAIL_SIZE) % DETAIL_SIZE) * (down / DETAIL_SIZE);
  const a = Math.floor(x);
  const b = Math.floor(y);
  const u = smooth(x - a);
  const v = smooth(y - b);
  const at = (di: number, dj: number) => scatter((a + di) % across, (b + dj) % down, layer);
  const low = at(0, 0) + u * (at(1, 0) - at(0, 0));
  const high = at(0, 1) + u * (at(1, 1) - at(0, 1));
  return low + v * (high - low);
}

const smooth = (t: number) => t * t * (3 - 2 * t);

/** A fixed value -1..1 for each lattice point. */
function scatter(i: number, j: number, layer: number): number {
  let h = Math.imul(i + 1, 0x27d4eb2d) ^ Math.imul(j + 1, 0x165667b1) ^ Math.imul(layer, 0x9e3779b1);
  h = Math.imul(h ^ (h >>> 15), 0x2c1b3c6d);
  h = Math.imul(h ^ (h >>> 12), 0x297a2d39);
  return ((h ^ (h >>> 15)) >>> 0) / 0x7fffffff - 1;
}
