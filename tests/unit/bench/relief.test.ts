import { describe, expect, it } from "vitest";
import { toHalf } from "@/app/_bench/viewer/half-float";
import { packRelief } from "@/app/_bench/viewer/relief";
import { columnX, type Grid, rowY } from "@/lib/surface";

/** Value of a 16-bit float by its definition in IEEE 754. */
function ofHalf(bits: number): number {
  const sign = bits & 0x8000 ? -1 : 1;
  const exponent = (bits >> 10) & 31;
  return exponent === 0 ? sign * 0 : sign * 2 ** (exponent - 15) * (1 + (bits & 1023) / 1024);
}

describe("half floats", () => {
  it("hold what they can hold, and the rest to one part in a thousand", () => {
    for (const value of [0, 1, -2, 0.5, 1024, -0.09375]) expect(ofHalf(toHalf(value))).toBe(value + 0);
    for (const value of [0.1, -3.3, 1.2345, 77.7, -0.0123]) {
      expect(Math.abs(ofHalf(toHalf(value)) / value - 1)).toBeLessThan(1 / 1000);
    }
  });

  it("end at their largest and at nothing", () => {
    expect(ofHalf(toHalf(1e9))).toBe(65504);
    expect(ofHalf(toHalf(1e-9))).toBe(0);
  });
});

describe("packed relief", () => {
  const grid: Grid = { columns: 40, rows: 30, perMm: 4, x0: 0, y0: -4 };

  it("has the slopes of a leaning plane everywhere, and all of its sky", () => {
    const height = new Float32Array(grid.columns * grid.rows);
    for (let j = 0, k = 0; j < grid.rows; j++) {
      for (let i = 0; i < grid.columns; i++, k++) height[k] = 0.03 * columnX(grid, i) - 0.05 * rowY(grid, j);
    }
    const relief = packRelief(height, grid);
    for (let k = 0; k < height.length; k++) {
      expect(ofHalf(relief[4 * k + 1])).toBeCloseTo(0.03, 3);
      expect(ofHalf(relief[4 * k + 2])).toBeCloseTo(-0.05, 3);
    }
    const middle = 15 * grid.columns + 20;
    expect(ofHalf(relief[4 * middle])).toBeCloseTo(height[middle], 3);
    expect(ofHalf(relief[4 * middle + 3])).toBeCloseTo(1, 2);
  });

  it("sees less sky from the bottom of a pit", () => {
    const height = new Float32Array(grid.columns * grid.rows);
    const bottom = 15 * grid.columns + 20;
    height[bottom] = -1;
    const relief = packRelief(height, grid);
    expect(ofHalf(relief[4 * bottom + 3])).toBeLessThan(0.6);
  });
});
