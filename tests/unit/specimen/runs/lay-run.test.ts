import { describe, expect, it } from "vitest";
import { createField, type Field } from "@/lib/specimen/field";
import type { RunPlan, Segment } from "@/lib/specimen/plan";
import { layRun } from "@/lib/specimen/runs/lay-run";
import { drawRippleNoise } from "@/lib/specimen/runs/ripple-noise";
import { columnX, type Grid, nearestColumn, nearestRow, sampleAt } from "@/lib/surface";

const GRID: Grid = { columns: 480, rows: 160, perMm: 8, x0: 0, y0: -10 };
const NOISE = drawRippleNoise(GRID, 5, [-9, 9]);

const line = (value: number) => new Float32Array(GRID.columns).fill(value);

const length = (a: number, b: number, more: Partial<Segment> = {}): Segment => ({
  a,
  b,
  hump: 0,
  humpLength: 5,
  crater: 0,
  shift: 0,
  widen: 0,
  wetting: 0,
  ...more,
});

/** A calm run, 8 mm wide and 2 mm high, without ragged toes and ripples. */
const calmRun = (segments: Segment[], more: Partial<RunPlan> = {}): RunPlan => ({
  seed: 11,
  direction: 1,
  centre: line(0),
  halfWidth: line(4),
  height: line(2),
  exponentMinus: line(2),
  exponentPlus: line(2),
  tail: line(0.7),
  ripple: line(0),
  raggedMinus: line(0),
  raggedPlus: line(0),
  tailPower: 2,
  pitch: 1.1,
  coarse: 0,
  smooth: 0.1,
  evenness: 0,
  fine: 0.2,
  bend: 1,
  dwell: 0.085,
  lean: 0,
  lag: 0,
  weave: false,
  segments,
  ...more,
});

const heightAt = (field: Field, x: number, y: number) => sampleAt(GRID, field.z, x, y);

describe("layRun", () => {
  it("lays a parabola of the planned height and width on a flat plate", () => {
    const field = createField(GRID);
    layRun(field, calmRun([length(-10, 70)]), 0, NOISE);
    for (const x of [5, 20, 44]) {
      expect(heightAt(field, x, 0)).toBeCloseTo(2, 1);
      // half way to the toe a parabola has three quarters of its height
      expect(heightAt(field, x, 2)).toBeCloseTo(1.5, 1);
      expect(heightAt(field, x, -5)).toBe(0);
      expect(field.run[nearestRow(GRID, 0) * GRID.columns + nearestColumn(GRID, x)]).toBe(1);
    }
  });

  it("stands on the line between the heights at its two toes", () => {
    const field = createField(GRID);
    for (let k = 0; k < field.z.length; k++) if (k >= (GRID.rows / 2) * GRID.columns) field.z[k] = 1;
    layRun(field, calmRun([length(-10, 70)]), 0, NOISE);
    expect(heightAt(field, 30, 0)).toBeCloseTo(2.5, 1);
    expect(heightAt(field, 30, 2)).toBeCloseTo(1.5 + 0.75, 1);
  });

  it("ends in rounded ends, leaves a crater and reports where", () => {
    const field = createField(GRID);
    const laid = layRun(field, calmRun([length(12, 45, { crater: 0.8 })]), 0, NOISE);
    expect(heightAt(field, 3, 0)).toBe(0);
    expect(heightAt(field, 52, 0)).toBe(0);
    expect(laid.craters).toHaveLength(1);
    const [crater] = laid.craters;
    expect(crater.x).toBeGreaterThan(40);
    expect(crater.x).toBeLessThan(45);
    expect(heightAt(field, crater.x, crater.y)).toBeLessThan(1.5);
    expect(laid.minus[nearestColumn(GRID, 3)]).toBeNaN();
    const inside = nearestColumn(GRID, 30);
    expect(laid.minus[inside]).toBeCloseTo(-4, 1);
    expect(laid.plus[inside]).toBeCloseTo(4, 1);
  });

  it("welds towards the datum when told so: the crater lies at the low end", () => {
    const field = createField(GRID);
    const laid = layRun(field, calmRun([length(12, 45, { crater: 0.6 })], { direction: -1 }), 0, NOISE);
    expect(laid.craters[0].x).toBeLessThan(17);
  });

  it("makes a restart as high as its hump says and never cuts into the metal before it", () => {
    const sound = createField(GRID);
    layRun(sound, calmRun([length(-10, 70)]), 0, NOISE);
    const field = createField(GRID);
    const restart = { hump: 0.5, wetting: 1, rearRadius: 3, lapSeed: 3 };
    layRun(field, calmRun([length(-10, 32), length(28, 70, restart)]), 0, NOISE);
    let highest = 0;
    for (let i = 0; i < GRID.columns; i++) {
      const x = columnX(GRID, i);
      const above = heightAt(field, x, 0) - heightAt(sound, x, 0);
      highest = Math.max(highest, above);
      expect(above).toBeGreaterThan(-0.05);
    }
    expect(highest).toBeGreaterThan(0.35);
    expect(highest).toBeLessThan(0.6);
  });

  it("leaves ripples of about the planned pitch along the middle", () => {
    const field = createField(GRID);
    layRun(field, calmRun([length(-10, 70)], { ripple: line(0.05) }), 0, NOISE);
    const heights = Array.from({ length: 320 }, (_, n) => heightAt(field, 10 + n / 8, 0));
    const crests = heights.filter(
      (z, n) =>
        n > 1 && n < 318 && z > heights[n - 2] && z > heights[n + 2] && z >= heights[n - 1] && z > heights[n + 1],
    );
    // 40 mm at a mean pitch of 1.1 mm are 36 ripples; some are nearly missing, fine ripple adds some
    expect(crests.length).toBeGreaterThan(18);
    expect(crests.length).toBeLessThan(80);
  });

  it("comes out the same again", () => {
    const once = createField(GRID);
    const again = createField(GRID);
    const run = calmRun([length(5, 30), length(27, 55, { wetting: 1 })], { ripple: line(0.05), raggedMinus: line(1) });
    layRun(once, run, 0, NOISE);
    layRun(again, run, 0, NOISE);
    expect(again.z).toEqual(once.z);
  });
});
