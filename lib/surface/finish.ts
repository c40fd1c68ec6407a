import type { Face } from "../weld";
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

/** One direction of brushing is stored for a block of this many pixels a side. */
const BRUSHING_BLOCK = 4;
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
 * strip averaged two by two. The sides must join the strip and have half its pixels per mm; throws otherwise.
 */
export function finishSurface(face: Face, strip: Planes, sideB: Planes, sideA: Planes): Surface {
  const middle = halve(strip);
  const plate = stack(sideB, middle, sideA);
  return { face, strip: toPatch(strip), plate: toPatch(plate) };
}

/** Planes as eight-bit pictures. Throws on a height that is not a number, with its place. */
export function toPatch(planes: Planes): Patch {
  const { grid, z, red, green, blue, rough, metal, brush } = planes;
  const size = grid.columns * grid.rows;
  const albedo = new Uint8Array(3 * size);
  const finish = new Uint8Array(3 * size);
  for (let k = 0, n = 0; k < size; k++, n += 3) {
    if (!Number.isFinite(z[k]))
      throw new Error(`height ${z[k]} at pixel ${k % grid.columns}, ${(k / grid.columns) | 0}`);
    albedo[n] = srgbByte(red[k]);
    albedo[n + 1] = srgbByte(green[k]);
    albedo[n + 2] = srgbByte(blue[k]);
    finish[n] = shareByte(rough[k]);
    finish[n + 1] = shareByte(metal[k]);
    finish[n + 2] = shareByte(brush[k]);
  }
  return { grid, height: Float32Array.from(z), albedo, finish, brushing: brushingOf(planes) };
}

/** Mean direction per block, as the mean of doubled angles weighted by strength: crossing directions cancel out. */
function brushingOf({ grid, brush, brushAngle }: Planes): Patch["brushing"] {
  const columns = Math.ceil(grid.columns / BRUSHING_BLOCK);
  const rows = Math.ceil(grid.rows / BRUSHING_BLOCK);
  const values = new Uint8Array(2 * columns * rows).fill(128);
  for (let j = 0, n = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++, n += 2) {
      let cosine = 0;
      let sine = 0;
      let weight = 0;
      const lastRow = Math.min(grid.rows, (j + 1) * BRUSHING_BLOCK);
      const lastColumn = Math.min(grid.columns, (i + 1) * BRUSHING_BLOCK);
      for (let b = j * BRUSHING_BLOCK; b < lastRow; b++) {
        for (let a = i * BRUSHING_BLOCK; a < lastColumn; a++) {
          const k = b * grid.columns + a;
          if (brush[k] <= 0) continue;
          cosine += brush[k] * Math.cos(2 * brushAngle[k]);
          sine += brush[k] * Math.sin(2 * brushAngle[k]);
          weight += brush[k];
        }
      }
      if (weight <= 0) continue;
      values[n] = Math.round(128 + (127 * cosine) / weight);
      values[n + 1] = Math.round(128 + (127 * sine) / weight);
    }
  }
  return { columns, rows, values };
}

/** Planes at half the resolution, each pixel the mean of four. */
function halve(planes: Planes): Planes {
  const { grid } = planes;
  const columns = grid.columns >> 1;
  const rows = grid.rows >> 1;
  const mean = (from: Float32Array): Float32Array => {
    const to = new Float32Array(columns * rows);
    for (let j = 0, k = 0; j < rows; j++) {
      for (let i = 0, q = 2 * j * grid.columns; i < columns; i++, k++, q += 2) {
        to[k] = 0.25 * (from[q] + from[q + 1] + from[q + grid.columns] + from[q + grid.columns + 1]);
      }
    }
    return to;
  };
  const brush = mean(planes.brush);
  const brushAngle = new Float32Array(columns * rows);
  for (let j = 0, k = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++, k++) {
      if (brush[k] <= 0) continue;
      let cosine = 0;
      let sine = 0;
      for (let b = 0; b < 2; b++) {
        for (let a = 0; a < 2; a++) {
          const q = (2 * j + b) * grid.columns + 2 * i + a;
          cosine += planes.brush[q] * Math.cos(2 * planes.brushAngle[q]);
          sine += planes.brush[q] * Math.sin(2 * planes.brushAngle[q]);
        }
      }
      brushAngle[k] = 0.5 * Math.atan2(sine, cosine);
    }
  }
  return {
    grid: { ...grid, columns, rows, perMm: grid.perMm / 2 },
    z: mean(planes.z),
    red: mean(planes.red),
    green: mean(planes.green),
    blue: mean(planes.blue),
    rough: mean(planes.rough),
    metal: mean(planes.metal),
    brush,
    brushAngle,
  };
}

/** Three patches, one beyond the other in y, as one. */
function stack(...parts: readonly Planes[]): Planes {
  const first = parts[0].grid;
  let rows = 0;
  for (const { grid } of parts) {
    const joins = Math.abs(grid.y0 - (first.y0 + rows / first.perMm)) < 1e-9;
    if (!joins || grid.columns !== first.columns || grid.perMm !== first.perMm || grid.x0 !== first.x0) {
      throw new Error(
        `patch of ${grid.columns} x ${grid.rows} at ${grid.perMm} per mm from y ${grid.y0} does not join`,
      );
    }
    rows += grid.rows;
  }
  const join = (plane: (part: Planes) => Float32Array): Float32Array => {
    const out = new Float32Array(first.columns * rows);
    let at = 0;
    for (const part of parts) {
      out.set(plane(part), at);
      at += plane(part).length;
    }
    return out;
  };
  return {
    grid: { ...first, rows },
    z: join((part) => part.z),
    red: join((part) => part.red),
    green: join((part) => part.green),
    blue: join((part) => part.blue),
    rough: join((part) => part.rough),
    metal: join((part) => part.metal),
    brush: join((part) => part.brush),
    brushAngle: join((part) => part.brushAngle),
  };
}
