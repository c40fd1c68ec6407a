import { describe, expect, it } from "vitest";
import { cutSection, heightsOfFace } from "@/lib/gauges";
import { columnX, type Patch, PLATE_GRID, rowY, STRIP_GRID } from "@/lib/surface";

type HeightFormula = (x: number, y: number) => number;

function patchOf(grid: Patch["grid"], formula: HeightFormula): Patch {
  const height = new Float32Array(grid.columns * grid.rows);
  for (let j = 0, k = 0; j < grid.rows; j++) {
    for (let i = 0; i < grid.columns; i++, k++) height[k] = formula(columnX(grid, i), rowY(grid, j));
  }
  const none = new Uint8Array(0);
  return { grid, height, albedo: none, finish: none, brushing: { columns: 0, rows: 0, values: none } };
}

const surfaceOf = (formula: HeightFormula) => ({
  strip: patchOf(STRIP_GRID, formula),
  plate: patchOf(PLATE_GRID, formula),
});

describe("section", () => {
  it("follows the formula along a slanting line", () => {
    const surface = surfaceOf((x, y) => 0.01 * x - 0.02 * y);
    const points = cutSection(surface, { x: 100, y: 0, turn: 30, from: -8, to: 12 }, 0.5);
    expect(points).toHaveLength(41);
    for (const { at: along, height } of points) {
      const x = 100 + along * Math.cos(Math.PI / 6);
      const y = along * Math.sin(Math.PI / 6);
      expect(height).toBeCloseTo(0.01 * x - 0.02 * y, 4);
    }
  });

  it("ends at the edge of the plate", () => {
    const surface = surfaceOf(() => 0);
    const points = cutSection(surface, { x: 150, y: 0, turn: 90, from: 60, to: 90 }, 1);
    expect(points[points.length - 1].at).toBe(75);
  });
});

describe("heights of a face", () => {
  it("are the surface's own, from edge to edge of the plate", () => {
    const heights = heightsOfFace(surfaceOf((x, y) => 0.01 * x - 0.02 * y));
    expect(heights.extent).toEqual({ x0: 0, x1: 300, y0: -75, y1: 75 });
    expect(heights.corner).toBeNull();
    for (const [x, y] of [
      [40, 3.2],
      [251.7, -11],
      [150, 60],
    ]) {
      expect(heights.heightAt(x, y)).toBeCloseTo(0.01 * x - 0.02 * y, 4);
    }
  });
});
