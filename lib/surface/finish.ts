import type { SurfaceFace } from "../weld";
import { BRUSHING_BLOCK, type BrushBlocks, brushBlocks, brushingOf, halvedBlocks } from "./brushing";
import type { Grid } from "./grid";
import type { Patch, Surface } from "./surface";

/** One patch as it is worked on: a value per pixel, colours in linear light 0..1, brush direction in radians. */
export interface Planes {
  readonly grid: Grid;
  readonly z: Float32Array;
  readonly red: Float32Array;
  readonly green: Float32Array;
  readonly blue: Float32Array;
  readonly rough: Float32Array;
  readonly metal: Float32Array;
  readonly brush: Float32Array;
  readonly brushAngle: Float32Array;
}

const CODES = 16384;
/** Linear light to sRGB bytes (IEC 61966-2-1). */
const SRGB_BYTE = Uint8Array.from({ length: CODES + 1 }, (_, n) => {
  const light = n / CODES;
  return Math.round(255 * (light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055));
});
const srgbByte = (light: number): number => SRGB_BYTE[light <= 0 ? 0 : light >= 1 ? CODES : (light * CODES + 0.5) | 0];
const shareByte = (share: number): number => (share <= 0 ? 0 : share >= 1 ? 255 : (share * 255 + 0.5) | 0);

/**
 * The finished face: the strip as it is, and the whole plate at half the strip's resolution from both sides and the
 * strip averaged two by two. The sides must join the strip, have half its pixels per mm and whole blocks of brushing;
 * throws otherwise. Throws on a height or a material that is not a number, with its place.
 */
export function finishSurface(face: SurfaceFace, strip: Planes, sideB: Planes, sideA: Planes): Surface {
  const blocks = brushBlocks(strip);
  return { face, strip: withBrushing(strip, blocks), plate: toPlate(strip, blocks, sideB, sideA) };
}

/** Planes as eight-bit pictures. Throws on a height or a material that is not a number, with its place. */
export const toPatch = (planes: Planes): Patch => withBrushing(planes, brushBlocks(planes));

function withBrushing(planes: Planes, blocks: BrushBlocks): Patch {
  const { grid } = planes;
  const patch = emptyPatch(grid);
  writePixels(planes, patch, 0);
  return { grid, ...patch, brushing: brushingOf(blocks) };
}

type Pixels = Pick<Patch, "height" | "albedo" | "finish">;

function emptyPatch({ columns, rows }: Grid): Pixels {
  const size = columns * rows;
  return { height: new Float32Array(size), albedo: new Uint8Array(3 * size), finish: new Uint8Array(3 * size) };
}

/** Writes a patch pixel by pixel, from pixel `at` on. */
function writePixels({ grid, z, red, green, blue, rough, metal, brush }: Planes, to: Pixels, at: number): void {
  const { albedo, finish } = to;
  to.height.set(z, at);
  for (let k = 0, n = 3 * at; k < z.length; k++, n += 3) {
    // one sum tells of all: a term that is not finite makes it not finite
    if (!Number.isFinite(z[k] + red[k] + green[k] + blue[k] + rough[k] + metal[k] + brush[k]))
      throw new Error(
        `height ${z[k]} or its material is not a number at pixel ${k % grid.columns}, ${(k / grid.columns) | 0}`,
      );
    albedo[n] = srgbByte(red[k]);
    albedo[n + 1] = srgbByte(green[k]);
    albedo[n + 2] = srgbByte(blue[k]);
    finish[n] = shareByte(rough[k]);
    finish[n + 1] = shareByte(metal[k]);
    finish[n + 2] = shareByte(brush[k]);
  }
}

/** Writes a patch at half its resolution, each pixel the mean of four, from pixel `at` on. */
function writeHalved({ grid, z, red, green, blue, rough, metal, brush }: Planes, to: Pixels, at: number): void {
  const { height, albedo, finish } = to;
  const wide = grid.columns;
  const columns = wide >> 1;
  for (let j = 0, k = at, n = 3 * at; j < grid.rows >> 1; j++) {
    for (let i = 0, q = 2 * j * wide; i < columns; i++, k++, n += 3, q += 2) {
      height[k] = mean4(z, q, wide);
      albedo[n] = srgbByte(mean4(red, q, wide));
      albedo[n + 1] = srgbByte(mean4(green, q, wide));
      albedo[n + 2] = srgbByte(mean4(blue, q, wide));
      finish[n] = shareByte(mean4(rough, q, wide));
      finish[n + 1] = shareByte(mean4(metal, q, wide));
      finish[n + 2] = shareByte(mean4(brush, q, wide));
    }
  }
}

const mean4 = (plane: Float32Array, q: number, columns: number): number =>
  0.25 * (plane[q] + plane[q + 1] + plane[q + columns] + plane[q + columns + 1]);

/** Plate B's side, the strip at half its resolution and plate A's side, one beyond the other in y. */
function toPlate(strip: Planes, blocks: BrushBlocks, sideB: Planes, sideA: Planes): Patch {
  const { columns, rows, perMm } = strip.grid;
  const middle: Grid = { ...strip.grid, columns: columns >> 1, rows: rows >> 1, perMm: perMm / 2 };
  const grid = joined([sideB.grid, middle, sideA.grid]);
  const patch = emptyPatch(grid);
  const stripAt = sideB.z.length;
  writePixels(sideB, patch, 0);
  writeHalved(strip, patch, stripAt);
  writePixels(sideA, patch, stripAt + middle.columns * middle.rows);
  const brushing = brushingOf(brushBlocks(sideB), halvedBlocks(blocks), brushBlocks(sideA));
  return { grid, ...patch, brushing };
}

/** The grid of patches that lie one beyond the other in y. */
function joined(grids: readonly Grid[]): Grid {
  const [first] = grids;
  let rows = 0;
  for (const { columns, rows: own, perMm, x0, y0 } of grids) {
    const joins = Math.abs(y0 - (first.y0 + rows / first.perMm)) < 1e-9 && own % BRUSHING_BLOCK === 0;
    if (!joins || columns !== first.columns || perMm !== first.perMm || x0 !== first.x0) {
      throw new Error(`patch of ${columns} x ${own} at ${perMm} per mm from y ${y0} does not join`);
    }
    rows += own;
  }
  return { ...first, rows };
}
