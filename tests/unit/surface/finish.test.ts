import { describe, expect, it } from "vitest";
import { finishSurface, type Grid, type Planes, toPatch } from "@/lib/surface";

function planes(grid: Grid, value: (x: number, y: number) => number): Planes {
  const size = grid.columns * grid.rows;
  const plane = (fill: number) => new Float32Array(size).fill(fill);
  const z = Float32Array.from({ length: size }, (_, k) =>
    value(
      grid.x0 + ((k % grid.columns) + 0.5) / grid.perMm,
      grid.y0 + (Math.floor(k / grid.columns) + 0.5) / grid.perMm,
    ),
  );
  return {
    grid,
    z,
    red: plane(0.5),
    green: plane(0.003),
    blue: plane(1.2),
    rough: plane(0.4),
    metal: plane(0.6),
    brush: plane(0.5),
    brushAngle: plane(0.3),
  };
}

const STRIP: Grid = { columns: 32, rows: 16, perMm: 8, x0: 0, y0: -1 };
const SIDE_B: Grid = { columns: 16, rows: 8, perMm: 4, x0: 0, y0: -3 };
const SIDE_A: Grid = { ...SIDE_B, y0: 1 };
const slope = (x: number, y: number) => 0.5 * x - 0.25 * y;

describe("finishSurface", () => {
  it("joins the sides and the averaged strip: a plane stays the same plane", () => {
    const surface = finishSurface("cap", planes(STRIP, slope), planes(SIDE_B, slope), planes(SIDE_A, slope));
    const { grid, height } = surface.plate;
    expect(grid).toEqual({ columns: 16, rows: 24, perMm: 4, x0: 0, y0: -3 });
    for (let k = 0; k < height.length; k++) {
      const x = ((k % 16) + 0.5) / 4;
      const y = -3 + (Math.floor(k / 16) + 0.5) / 4;
      expect(height[k]).toBeCloseTo(slope(x, y), 5);
    }
  });

  it("refuses sides that leave a gap", () => {
    const far = planes({ ...SIDE_A, y0: 1.25 }, slope);
    expect(() => finishSurface("cap", planes(STRIP, slope), planes(SIDE_B, slope), far)).toThrow("does not join");
  });
});

describe("toPatch", () => {
  it("writes sRGB and shares as bytes, bounded", () => {
    const patch = toPatch(planes(SIDE_B, slope));
    // IEC 61966-2-1: linear 0.5 is 187.5 of 255; 0.0030 lies on the straight piece, 12.92 x 0.0030 x 255 = 9.9
    expect(Math.abs(patch.albedo[0] - 187.5)).toBeLessThanOrEqual(0.5);
    expect(patch.albedo[1]).toBe(10);
    expect(patch.albedo[2]).toBe(255);
    expect([...patch.finish.subarray(0, 3)]).toEqual([102, 153, 128]);
    expect(patch.brushing.columns).toBe(4);
    expect(patch.brushing.values[0]).toBe(Math.round(128 + 127 * Math.cos(0.6)));
    expect(patch.brushing.values[1]).toBe(Math.round(128 + 127 * Math.sin(0.6)));
  });

  it("has no direction where two directions cross", () => {
    const crossed = planes(SIDE_B, slope);
    crossed.brushAngle.forEach((_, k) => {
      crossed.brushAngle[k] = k % 2 ? 0.3 : 0.3 + Math.PI / 2;
    });
    const { values } = toPatch(crossed).brushing;
    expect(Math.abs(values[0] - 128)).toBeLessThanOrEqual(1);
    expect(Math.abs(values[1] - 128)).toBeLessThanOrEqual(1);
  });

  it("stops at a height that is not a number and says where", () => {
    const broken = planes(SIDE_B, slope);
    broken.z[19] = Number.NaN;
    expect(() => toPatch(broken)).toThrow("pixel 3, 1");
  });
});
