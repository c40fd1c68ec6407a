import { describe, expect, test } from "vitest";
import { boxBlur, byteGrid, copiedGrid, floatGrid, noiseField, withGridRoom } from "@/lib/surface";

const SIZE = 100_000;

describe("room for grids", () => {
  test("memory is used again from scope to scope, and every grid begins with zeros", () => {
    const first = withGridRoom(() => floatGrid(SIZE).fill(7));
    withGridRoom(() => {
      const again = floatGrid(SIZE);
      expect(again.buffer).toBe(first.buffer);
      expect(again.byteOffset).toBe(first.byteOffset);
      expect(again.every((value) => value === 0)).toBe(true);
      expect(byteGrid(SIZE).every((value) => value === 0)).toBe(true);
    });
  });

  test("grids of one scope and of those around it share no byte", () => {
    withGridRoom(() => {
      const outer = [floatGrid(SIZE).fill(1), copiedGrid(floatGrid(SIZE).fill(2))];
      withGridRoom(() => {
        floatGrid(SIZE).fill(3);
        byteGrid(SIZE).fill(4);
      });
      const later = floatGrid(SIZE).fill(5);
      expect(outer[0].every((value) => value === 1)).toBe(true);
      expect(outer[1].every((value) => value === 2)).toBe(true);
      expect(later.every((value) => value === 5)).toBe(true);
    });
  });

  test("a scope that ends by an error gives its memory back", () => {
    const place = () => withGridRoom(() => floatGrid(SIZE).byteOffset);
    const before = place();
    expect(() =>
      withGridRoom(() => {
        floatGrid(SIZE);
        throw new Error("midway");
      }),
    ).toThrow("midway");
    expect(place()).toBe(before);
  });

  test("the room grows as far as it must, and no further when the same is made again", () => {
    // 200 MB: more than one block
    const buffers = () => withGridRoom(() => new Set(Array.from({ length: 50 }, () => floatGrid(1e6).buffer)));
    const first = buffers();
    expect(first.size).toBeGreaterThan(1);
    expect([...buffers()].every((buffer) => first.has(buffer))).toBe(true);
  });

  test("outside of any scope grids stay", () => {
    const kept = floatGrid(SIZE).fill(1);
    const field = noiseField({ columns: 300, rows: 300, perMm: 4, x0: 0, y0: 0 }, 3, 3, 5);
    const copy = field.slice();
    withGridRoom(() => floatGrid(SIZE).fill(9));
    floatGrid(SIZE).fill(9);
    expect(kept.every((value) => value === 1)).toBe(true);
    expect(field).toEqual(copy);
  });

  test("noise and blur do not depend on what lay in the memory before", () => {
    const grid = { columns: 400, rows: 300, perMm: 4, x0: 0, y0: 0 };
    const made = () => noiseField(grid, 9, 5, 3, 3, 0.6, [10, 60]);
    const plain = boxBlur(made(), grid.columns, grid.rows, 4, 3);
    const dirty = withGridRoom(() => {
      withGridRoom(() => {
        for (let n = 0; n < 8; n++) floatGrid(SIZE).fill(Number.NaN);
      });
      return boxBlur(made(), grid.columns, grid.rows, 4, 3).slice();
    });
    expect(dirty).toEqual(plain);
  });
});
