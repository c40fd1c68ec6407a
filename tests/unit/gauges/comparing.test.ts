import { describe, expect, it, test } from "vitest";
import { gapAt, pressComb, readRule, tryLeaf } from "@/lib/gauges";
import { bead, FLAT, plateOf, STEADY } from "./support/analytic";

describe("steel rule", () => {
  const plate = plateOf(FLAT);
  const rule = { x: 20, y: 30, turn: 0 };

  it("shows the place's distance from its nought along the edge, to half a millimetre", () => {
    expect(readRule(plate, rule, { x: 61.8, y: 27 }, STEADY)).toMatchObject({ ok: true, reading: 42, aside: -3 });
    const slanting = readRule(plate, { ...rule, turn: 30 }, { x: 20 + 10 * Math.cos(Math.PI / 6), y: 35 }, STEADY);
    expect(slanting.ok && slanting.exact).toBeCloseTo(10, 6);
  });

  it("refuses with its reason", () => {
    expect(readRule(plate, rule, { x: 60, y: 50 }, STEADY)).toMatchObject({ code: "cannot-reach" });
    expect(readRule(plate, rule, { x: 10, y: 30 }, STEADY)).toMatchObject({ code: "out-of-range" });
    expect(readRule(plate, rule, { x: 310, y: 30 }, STEADY)).toMatchObject({ code: "off-plate" });
    expect(readRule(plate, { x: 0, y: 80, turn: 0 }, { x: 10, y: 74 }, STEADY)).toMatchObject({ code: "no-support" });
  });
});

describe("feeler", () => {
  test.each([
    [1.24, 1.2, "fits"],
    [1.24, 1.3, "does-not-go"],
    [1.24, 1.1, "loose"],
    [1.2, 1.2, "fits"],
    [0, 0.1, "does-not-go"],
  ] as const)("in a gap of %f the leaf of %f: %s", (gap, leaf, fit) => {
    expect(tryLeaf(gap, leaf)).toBe(fit);
  });

  it("finds the root gap of a V preparation below its root face", () => {
    // 10 mm plates, 60 degrees, root face 2, gap 2.4: width at depth d is gap + 2 (8 - d) tan 30 above the root face
    const open = plateOf((_x, y) => {
      const out = Math.abs(y) - 1.2;
      return out < 0 ? -20 : Math.min(0, -8 + out / Math.tan(Math.PI / 6));
    });
    const spot = { x: 100, y: 0.3, turn: 90 };
    expect(Math.abs(gapAt(open, spot, 9) - 2.4)).toBeLessThan(0.05);
    expect(Math.abs(gapAt(open, spot, 5) - (2.4 + 6 * Math.tan(Math.PI / 6)))).toBeLessThan(0.05);
    expect(gapAt(open, { ...spot, y: 4 }, 9)).toBe(0);
    expect(
      gapAt(
        plateOf(() => -20),
        spot,
        9,
      ),
    ).toBe(Number.POSITIVE_INFINITY);
  });
});

describe("profile comb", () => {
  it("keeps the shape of a bead", () => {
    const pins = pressComb(plateOf(bead(2.4, 8)), { x: 100, y: 0, turn: 90 });
    expect(pins).toHaveLength(101);
    for (const { at, height } of pins) {
      const formula = Math.max(0, 2.4 * (1 - (at / 8) ** 2));
      // a round end of 0.4 mm on a slope of at most 0.6 stands 0.4 (sqrt(1 + 0.6^2) - 1) over it
      expect(height).toBeGreaterThan(formula - 0.001);
      expect(height).toBeLessThan(formula + 0.08);
    }
  });

  it("has pins without metal beyond the plate's edge", () => {
    const pins = pressComb(plateOf(FLAT), { x: 100, y: 60, turn: 90 });
    expect(pins[0].height).toBeCloseTo(0, 9);
    expect(pins[100].height).toBeNull();
  });
});
