import { gzipSync } from "node:zlib";
import { describe, expect, test } from "vitest";
import {
  decodeFace,
  encodeFace,
  type Patch,
  PLATE_GRID,
  STRIP_GRID,
  STRIP_HALF_WIDTH,
  type Surface,
} from "@/lib/surface";

/** A wavy plate whose two patches show the same shape, as a generated one does. */
function wavySurface(): Surface {
  const shape = (x: number, y: number) => Math.sin(x / 7) * Math.cos(y / 5) * 2 - (Math.abs(y) < 1 ? 5.2 : 0);
  const patch = (grid: typeof STRIP_GRID): Patch => {
    const size = grid.columns * grid.rows;
    const height = new Float32Array(size);
    for (let k = 0; k < size; k++) {
      const x = grid.x0 + ((k % grid.columns) + 0.5) / grid.perMm;
      const y = grid.y0 + (Math.floor(k / grid.columns) + 0.5) / grid.perMm;
      height[k] = shape(x, y);
    }
    const columns = Math.ceil(grid.columns / 4);
    const rows = Math.ceil(grid.rows / 4);
    const values = new Uint8Array(2 * columns * rows).map((_, k) => (k * 37) & 0xff);
    return {
      grid,
      height,
      albedo: new Uint8Array(3 * size).map((_, k) => k & 0xff),
      finish: new Uint8Array(3 * size).map((_, k) => (k * 3) & 0xff),
      brushing: { columns, rows, values },
    };
  };
  return { face: "root", strip: patch(STRIP_GRID), plate: patch(PLATE_GRID) };
}

const same = (a: Uint8Array, b: Uint8Array) => Buffer.compare(a, b) === 0;

const surface = wavySurface();
const pictures: Uint8Array[] = [];
const bytes = await encodeFace(surface, async (rgb) => {
  pictures.push(rgb);
  return rgb.slice(0, 100 + pictures.length);
});
const decoded = decodeFace(bytes);

describe("packed surface", () => {
  test("keeps strip heights to half a step of 2 micrometres", () => {
    let worst = 0;
    for (let k = 0; k < surface.strip.height.length; k++) {
      worst = Math.max(worst, Math.abs(surface.strip.height[k] - decoded.strip.height[k]));
    }
    expect(worst).toBeLessThan(0.00101);
  });

  test("keeps the plate outside the strip, and the strip's own average inside", () => {
    let worst = 0;
    for (let k = 0; k < surface.plate.height.length; k++) {
      const y = PLATE_GRID.y0 + (Math.floor(k / PLATE_GRID.columns) + 0.5) / PLATE_GRID.perMm;
      if (Math.abs(y) < STRIP_HALF_WIDTH) continue;
      worst = Math.max(worst, Math.abs(surface.plate.height[k] - decoded.plate.height[k]));
    }
    expect(worst).toBeLessThan(0.00101);
    const j = PLATE_GRID.rows / 2 + 40;
    const i = 500;
    const y = PLATE_GRID.y0 + (j + 0.5) / PLATE_GRID.perMm;
    const q = Math.round((y - 0.0625 - STRIP_GRID.y0) * STRIP_GRID.perMm - 0.5) * STRIP_GRID.columns + 2 * i;
    const wide = STRIP_GRID.columns;
    const average = [q, q + 1, q + wide, q + wide + 1].reduce((sum, k) => sum + surface.strip.height[k] / 4, 0);
    expect(decoded.plate.height[j * PLATE_GRID.columns + i]).toBeCloseTo(average, 2);
  });

  test("hands pictures and brushing through unchanged", () => {
    expect(decoded.face).toBe("root");
    const sent = [surface.strip.albedo, surface.strip.finish, surface.plate.albedo, surface.plate.finish];
    expect(sent.map((picture, n) => same(picture, pictures[n]))).toEqual([true, true, true, true]);
    expect(decoded.strip.albedo.length).toBe(101);
    expect(decoded.plate.finish.length).toBe(104);
    expect(same(decoded.strip.brushing.values, surface.strip.brushing.values)).toBe(true);
    expect(same(decoded.plate.brushing.values, surface.plate.brushing.values)).toBe(true);
    expect(decoded.strip.brushing.columns).toBe(surface.strip.brushing.columns);
  });

  test("a smooth surface packs far below its sixteen bits a pixel", () => {
    expect(gzipSync(bytes).length).toBeLessThan(0.5 * 2 * surface.strip.height.length);
  });

  test("tells how far the plate's other face lies, to a micrometre, where that was packed", async () => {
    expect(decoded.facesApart).toBeNull();
    const both = await encodeFace(surface, async () => new Uint8Array(3), 10.1234);
    expect(decodeFace(both).facesApart).toBe(10.123);
    expect(same(decodeFace(both).plate.brushing.values, surface.plate.brushing.values)).toBe(true);
  });

  test("refuses foreign, newer and cut-off files", () => {
    expect(() => decodeFace(new Uint8Array([1, 2, 3]))).toThrow("not a packed surface");
    expect(() => decodeFace(bytes.subarray(0, bytes.length - 5))).toThrow("cut off");
    const newer = bytes.slice();
    newer[5] = 9;
    expect(() => decodeFace(newer)).toThrow("version 9");
  });
});
