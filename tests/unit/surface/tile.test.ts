import { describe, expect, test } from "vitest";
import { randomStream } from "@/lib/random";
import { halfOf, packTile, type TileCut, unpackTile } from "@/lib/surface";

const PICTURES = { albedo: new Uint8Array([1, 2, 3]), finish: new Uint8Array([4, 5]) };

/** A strip of 24 x 16 pixels, eight to a mm, with heights in whole steps of 2 micrometres. */
function someStrip(name = "strip") {
  const stream = randomStream(name);
  const grid = { columns: 24, rows: 16, perMm: 8, x0: 0, y0: -1 };
  const height = Float32Array.from({ length: 24 * 16 }, () => stream.integer(2000) * 0.002 - 2);
  const values = Uint8Array.from({ length: 2 * 6 * 4 }, () => stream.integer(256));
  return { face: "root" as const, grid, height, brushing: { columns: 6, rows: 4, values } };
}

const CUT: TileCut = { column: 8, row: 4, columns: 12, rows: 8, isTurned: false };
const TURNED: TileCut = { ...CUT, isTurned: true };

describe("a window cut out of a strip", () => {
  const strip = someStrip();

  test.each([CUT, TURNED])("has the heights and the brushing of its place, pixel by pixel: %j", (cut) => {
    const tile = unpackTile(packTile(strip, cut, PICTURES), 8);
    expect(tile).toMatchObject({ face: "root", grid: { columns: 12, rows: 8, perMm: 8, x0: 0, y0: -0.5 } });
    for (let j = 0; j < 8; j++) {
      for (let i = 0; i < 12; i++) {
        const [a, b] = cut.isTurned ? [11 - i, 7 - j] : [i, j];
        expect(tile.height[j * 12 + i]).toBeCloseTo(strip.height[(4 + b) * 24 + 8 + a], 6);
      }
    }
    expect(tile.brushing).toMatchObject({ columns: 3, rows: 2 });
    for (let j = 0; j < 2; j++) {
      for (let i = 0; i < 3; i++) {
        const [a, b] = cut.isTurned ? [2 - i, 1 - j] : [i, j];
        const from = 2 * ((1 + b) * 6 + 2 + a);
        expect([...tile.brushing.values.subarray(2 * (j * 3 + i), 2 * (j * 3 + i) + 2)]).toEqual([
          strip.brushing.values[from],
          strip.brushing.values[from + 1],
        ]);
      }
    }
    expect([tile.albedo, tile.finish]).toEqual([PICTURES.albedo, PICTURES.finish]);
  });

  test("does not tell where it lay, nor anything that lies outside it", () => {
    // the same metal at two places of two strips that differ everywhere else
    const other = someStrip("another");
    for (let j = 0; j < 8; j++) {
      for (let i = 0; i < 12; i++) other.height[(8 + j) * 24 + 4 + i] = strip.height[(4 + j) * 24 + 8 + i];
    }
    for (let j = 0; j < 2; j++) {
      for (let n = 0; n < 6; n++) {
        other.brushing.values[2 * ((2 + j) * 6 + 1) + n] = strip.brushing.values[2 * ((1 + j) * 6 + 2) + n];
      }
    }
    const elsewhere = packTile(other, { ...CUT, column: 4, row: 8 }, PICTURES);
    expect(elsewhere).toEqual(packTile(strip, CUT, PICTURES));
  });

  test("is refused where it is none, of another version, or cut off", () => {
    const bytes = packTile(strip, CUT, PICTURES);
    expect(() => unpackTile(new Uint8Array(20), 8)).toThrow("not a packed window");
    expect(() => unpackTile(bytes.subarray(0, -1), 8)).toThrow("packed window is cut off");
    const newer = bytes.slice();
    newer[5] = 9;
    expect(() => unpackTile(newer, 8)).toThrow("packed window of version 9");
  });

  test("is averaged two by two for what lies coarser beneath it", () => {
    const tile = unpackTile(packTile(strip, CUT, PICTURES), 8);
    const half = halfOf(tile);
    expect(half.grid).toEqual({ columns: 6, rows: 4, perMm: 4, x0: 0, y0: -0.5 });
    const four = [0, 1, 12, 13].map((k) => tile.height[2 * 12 + 4 + k]);
    expect(half.height[6 + 2]).toBeCloseTo(four.reduce((a, b) => a + b) / 4, 6);
  });
});
