import { describe, expect, it } from "vitest";
import { lensScale, rowsOfFlags } from "@/lib/bench";

describe("flags on the weld line", () => {
  it("stand in one row while there is room", () => {
    expect(rowsOfFlags([100, 10, 60], 26)).toEqual([0, 0, 0]);
    expect(rowsOfFlags([], 26)).toEqual([]);
  });

  it("go back a row where they would cover their neighbour", () => {
    expect(rowsOfFlags([10, 30, 40], 26)).toEqual([0, 1, 0]);
    expect(rowsOfFlags([40, 30, 10], 26)).toEqual([0, 1, 0]);
  });

  it("take turns where there is no room in either row", () => {
    expect(rowsOfFlags([10, 10, 10, 10], 26)).toEqual([0, 1, 0, 1]);
  });
});

describe("the lens", () => {
  it("magnifies at least twice, and never beyond what the surface holds", () => {
    for (const scale of [0.9, 3, 5, 7.5, 9, 12]) {
      expect(lensScale(scale)).toBeGreaterThanOrEqual(2 * scale);
      expect(lensScale(scale)).toBeLessThanOrEqual(24);
    }
  });

  it("shows nothing where the picture is as close already", () => {
    expect(lensScale(13)).toBeNull();
    expect(lensScale(48)).toBeNull();
  });
});
