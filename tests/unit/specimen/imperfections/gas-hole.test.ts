import { describe, expect, it } from "vitest";
import { randomStream } from "@/lib/random";
import { cutGasHole, drawGasHole, paintGasHole } from "@/lib/specimen/imperfections/gas-hole";
import { measureHole } from "@/lib/specimen/measure";
import { bareField } from "./bare-field";

const SEEDS = Array.from({ length: 24 }, (_, n) => `hole-${n}`);

function holeOf(seed: string, diameter: number) {
  const field = bareField((x, y) => 0.03 * x - 0.02 * y);
  const hole = drawGasHole(randomStream(seed), 20.3, 0.4, diameter);
  const trace = cutGasHole(field, hole);
  return { field, hole, trace, found: measureHole(field, hole.x, hole.y, hole.radius) };
}

describe("gas holes", () => {
  it.each([0.8, 1.5, 2.4])("give mouths of about the asked %s mm", (diameter) => {
    const ratios = SEEDS.map((seed) => (holeOf(seed, diameter).found?.diameter ?? 0) / diameter);
    const mean = ratios.reduce((a, b) => a + b, 0) / ratios.length;
    expect(mean).toBeGreaterThan(0.9);
    expect(mean).toBeLessThan(1.1);
    for (const ratio of ratios) expect(ratio).toBeGreaterThan(0.6);
  });

  it("are as deep as drawn where they are open", () => {
    for (const seed of SEEDS) {
      const { hole, found } = holeOf(seed, 1.6);
      if (hole.skin || hole.slag !== null) continue;
      expect(Math.abs((found?.depth ?? 0) - hole.depth)).toBeLessThan(0.2 * hole.depth);
    }
  });

  it("differ in outline, lean and filling", () => {
    const holes = SEEDS.map((seed) => holeOf(seed, 1.6).hole);
    expect(holes.some((hole) => hole.skin)).toBe(true);
    expect(holes.some((hole) => hole.slag !== null)).toBe(true);
    expect(new Set(holes.map((hole) => hole.stretch.toFixed(3))).size).toBe(holes.length);
  });

  it("leave the metal beyond 3.1 radii as it was, and no pixel that is not a number", () => {
    const { field, hole, trace } = holeOf("far", 2);
    paintGasHole(field, hole, trace);
    const before = bareField((x, y) => 0.03 * x - 0.02 * y);
    const { columns, perMm, y0 } = field.grid;
    for (let k = 0; k < field.z.length; k++) {
      const x = ((k % columns) + 0.5) / perMm;
      const y = y0 + (Math.floor(k / columns) + 0.5) / perMm;
      expect(Number.isFinite(field.z[k]) && Number.isFinite(field.red[k])).toBe(true);
      if (Math.hypot(x - hole.x, y - hole.y) > 4 * hole.radius) expect(field.z[k]).toBe(before.z[k]);
    }
  });
});
