import { describe, expect, it } from "vitest";
import { cornerHeight, foldedAcross, foldedPlace, legsBetween, type Unfolding } from "@/lib/specimen/fillet/unfolding";

/** Folding worked out another way: points of the two plates and of the line between their toes, turned by 45 degrees. */
function unfoldingWith(base: number, standing: number): Unfolding {
  const half = Math.hypot(base, standing) / 2;
  const middle = (standing - base) / 2;
  return {
    baseLeg: Float32Array.of(base),
    standingLeg: Float32Array.of(standing),
    baseToe: Float32Array.of(middle - half),
    standingToe: Float32Array.of(middle + half),
  };
}
const turned = (along: number, up: number) => ({
  across: (along - up) / Math.SQRT2,
  outward: (along + up) / Math.SQRT2,
});

const LEGS = [
  [6, 6],
  [6, 8],
  [9, 5],
] as const;

describe("a fillet laid out flat", () => {
  it("finds the legs back from the places of the toes", () => {
    for (const [base, standing] of LEGS) {
      const { baseToe, standingToe } = unfoldingWith(base, standing);
      const legs = legsBetween(baseToe[0], standingToe[0]);
      expect(legs.base).toBeCloseTo(base, 5);
      expect(legs.standing).toBeCloseTo(standing, 5);
    }
  });

  it("folds both plates up at 45 degrees, mm for mm", () => {
    for (const [base, standing] of LEGS) {
      const unfolding = unfoldingWith(base, standing);
      for (const beyond of [0.5, 3, 20]) {
        const onBase = turned(base + beyond, 0);
        expect(foldedAcross(unfolding, 0, unfolding.baseToe[0] - beyond)).toBeCloseTo(onBase.across, 5);
        expect(foldedPlace(unfolding, 0, onBase.across).level).toBeCloseTo(onBase.outward, 5);
        const onStanding = turned(0, standing + beyond);
        expect(foldedAcross(unfolding, 0, unfolding.standingToe[0] + beyond)).toBeCloseTo(onStanding.across, 5);
        expect(foldedPlace(unfolding, 0, onStanding.across).level).toBeCloseTo(onStanding.outward, 5);
      }
    }
  });

  it("keeps depths square to a plate: 1 mm down lies 1 mm below the plate's plane", () => {
    const unfolding = unfoldingWith(6, 6);
    const { across, outward } = turned(10, 0);
    const z = outward - foldedPlace(unfolding, 0, across).rise;
    expect((z - across) / Math.SQRT2).toBeCloseTo(-1, 6);
  });

  it("lays the line between the toes where it belongs, there and back", () => {
    for (const [base, standing] of LEGS) {
      const unfolding = unfoldingWith(base, standing);
      for (const t of [0.1, 0.5, 0.8]) {
        const { across, outward } = turned(base * (1 - t), standing * t);
        const place = foldedPlace(unfolding, 0, across);
        expect(place.level).toBeCloseTo(outward, 5);
        expect(foldedAcross(unfolding, 0, place.y)).toBeCloseTo(across, 5);
      }
    }
  });

  it("puts the bare corner at 0 over itself", () => {
    for (const [base, standing] of LEGS) {
      const unfolding = unfoldingWith(base, standing);
      for (const v of [-2.5, -1, 0, 0.7, 2]) {
        const { y, level, rise } = foldedPlace(unfolding, 0, v);
        expect(level + rise * cornerHeight(unfolding, 0, y)).toBeCloseTo(Math.abs(v), 5);
      }
    }
  });
});
