import { describe, expect, it } from "vitest";
import {
  measureSteepToe,
  measureUnevenness,
  measureValley,
  measureWidthChange,
} from "../../../../lib/specimen/measure";
import { columnX } from "../../../../lib/surface";
import { faceOf, GRID } from "./synthetic";

const WHOLE = { from: 5, to: 55 };

describe("the valley between two runs", () => {
  /** Two flanks of slope 0.2 that meet at y = 0, and from 20 to 40 mm a slot of the given depth. */
  const face = (depth: number) =>
    faceOf((x, y) => 0.2 * Math.abs(y) - (x > 20 && x < 40 ? depth * Math.max(0, 1 - Math.abs(y) / 0.5) : 0));
  const search = { edge: () => 0, side: -1, range: { from: 17, to: 43 }, threshold: 0.2, bridge: 2 } as const;

  it("is as deep as the slot below the sound valley", () => {
    const found = measureValley(face(0.8).strip, search);
    // the pixels next to y = 0 lie 1/16 mm off the bottom: an eighth of the slot's half width less deep
    expect(found?.size).toBeCloseTo(0.8 * (1 - 0.0625 / 0.5), 2);
    expect(found?.start).toBeCloseTo(20, 6);
    expect(found?.end).toBeCloseTo(40, 6);
  });

  it("is nothing where both runs only meet", () => {
    expect(measureValley(face(0).strip, search)).toBeNull();
  });
});

describe("the width of the weld", () => {
  it("has changed by as much as both toes have moved", () => {
    const face = faceOf(() => 0);
    for (let i = 0; i < GRID.columns; i++) {
      const x = columnX(GRID, i);
      if (x < 25 || x > 40) continue;
      face.toePlus[i] += 1.5;
      face.toeMinus[i] -= 1;
    }
    const found = measureWidthChange(face, { range: WHOLE, threshold: 1.25, bridge: 3 });
    expect(found?.width).toBeCloseTo(2.5, 5);
    // averaged over 1 mm to both sides, a step is half there where it is
    expect(Math.abs((found?.start ?? 0) - 25)).toBeLessThan(0.2);
    expect(Math.abs((found?.end ?? 0) - 40)).toBeLessThan(0.2);
  });

  it("is even where the toes run straight, however far aside", () => {
    const face = faceOf(() => 0);
    for (let i = 0; i < GRID.columns; i++) {
      const aside = 3 * Math.sin(columnX(GRID, i) / 9);
      face.toePlus[i] += aside;
      face.toeMinus[i] += aside;
    }
    expect(measureWidthChange(face, { range: WHOLE, threshold: 0.01, bridge: 3 })).toBeNull();
  });
});

describe("unevenness along the weld", () => {
  it("of a wave is nearly its height: 5th to 95th hundredth of a sine lie at 0.988 of its amplitude", () => {
    const face = faceOf((x) => 0.6 * Math.sin((2 * Math.PI * x) / 4));
    const found = measureUnevenness(face, { range: { from: 15, to: 45 }, threshold: 0.5, bridge: 1 });
    expect(Math.abs((found?.size ?? 0) - 2 * 0.6 * Math.sin(0.45 * Math.PI))).toBeLessThan(0.05);
  });

  it("does not count a slope, nor a hump of one run among three", () => {
    const slope = faceOf((x) => 0.05 * x);
    expect(measureUnevenness(slope, { range: { from: 15, to: 45 }, threshold: 0.01, bridge: 1 })).toBeNull();
    const hump = faceOf((x, y) => (y > 3 ? Math.exp(-(((x - 30) / 3) ** 2)) : 0));
    expect(measureUnevenness(hump, { range: { from: 15, to: 45 }, threshold: 0.01, bridge: 1 })).toBeNull();
  });
});

describe("the angle of a toe", () => {
  const bead = (slope: number) => faceOf((_, y) => Math.min(2, Math.max(0, slope * (9 - Math.abs(y)))));

  it.each([45, 63, 70])("of %d degrees is read from the flank", (degrees) => {
    const face = bead(Math.tan((degrees * Math.PI) / 180));
    for (const side of [-1, 1] as const) {
      const found = measureSteepToe(face, { side, range: WHOLE, threshold: 30, bridge: 1 });
      expect(Math.abs((found?.size ?? 0) - degrees)).toBeLessThan(1);
    }
  });

  it("below the threshold is no steep toe", () => {
    expect(measureSteepToe(bead(1), { side: 1, range: WHOLE, threshold: 60, bridge: 1 })).toBeNull();
  });
});
