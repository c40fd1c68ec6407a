import { describe, expect, it } from "vitest";
import { filletSizes, flatThroat, requiredLeg, requiredThroat, type SectionPoint } from "@/lib/weld";

const flat = (base: number, standing: number, count = 40): SectionPoint[] =>
  Array.from({ length: count + 1 }, (_, n) => ({ along: base * (1 - n / count), up: (standing * n) / count }));

/** The same face pushed out square to itself by a parabola of this height; negative: hollow. */
const bowed = (base: number, standing: number, height: number): SectionPoint[] => {
  const long = Math.hypot(base, standing);
  return flat(base, standing, 400).map(({ along, up }, n) => {
    const t = n / 400;
    const out = height * 4 * t * (1 - t);
    return { along: along + (out * standing) / long, up: up + (out * base) / long };
  });
};

/** Tables of throats and legs, as any handbook of welding prints them: a = z / sqrt 2 to three decimals. */
const A_TO_Z = { 3: 4.243, 3.5: 4.95, 4: 5.657, 5: 7.071, 6: 8.485, 7: 9.899, 8: 11.314 };
const Z_TO_A = { 4: 2.828, 5: 3.536, 6: 4.243, 7: 4.95, 8: 5.657, 10: 7.071, 12: 8.485 };

describe("size on a drawing", () => {
  it("turns throats into legs and back as the tables do", () => {
    for (const [a, z] of Object.entries(A_TO_Z)) {
      expect(requiredLeg({ symbol: "a", value: Number(a) })).toBeCloseTo(z, 3);
      expect(requiredThroat({ symbol: "a", value: Number(a) })).toBe(Number(a));
    }
    for (const [z, a] of Object.entries(Z_TO_A)) {
      expect(requiredThroat({ symbol: "z", value: Number(z) })).toBeCloseTo(a, 3);
      expect(requiredLeg({ symbol: "z", value: Number(z) })).toBe(Number(z));
    }
  });

  it("knows the throat of unequal legs: z1 z2 / sqrt(z1^2 + z2^2)", () => {
    // right triangles of whole numbers, and two computed by hand
    expect(flatThroat(6, 8)).toBeCloseTo(4.8, 10);
    expect(flatThroat(3, 4)).toBeCloseTo(2.4, 10);
    expect(flatThroat(5, 12)).toBeCloseTo(60 / 13, 10);
    expect(flatThroat(8, 15)).toBeCloseTo(120 / 17, 10);
    expect(flatThroat(6, 9)).toBeCloseTo(4.9923, 4);
    expect(flatThroat(8, 10)).toBeCloseTo(6.247, 3);
  });
});

describe("what a throat gauge shows", () => {
  it("is the throat of equal legs, and with unequal ones sqrt 2 z1 z2 / (z1 + z2) and what the end rides up", () => {
    expect(filletSizes(flat(7, 7)).gaugeThroat).toBeCloseTo(7 / Math.SQRT2, 10);
    // legs 6 and 8: along = up = 24/7, so 4.8487 mm; the face rises 1 in 7 across, over half an end of 0.8 mm 0.1143 mm
    expect(filletSizes(flat(6, 8)).gaugeThroat).toBeCloseTo(4.8487 + 0.1143, 3);
    expect(filletSizes(flat(8, 6)).gaugeThroat).toBeCloseTo(4.8487 + 0.1143, 3);
    expect(filletSizes(flat(6, 8, 3)).gaugeThroat).toBeCloseTo(4.8487 + 0.1143, 3);
  });

  it("grows with what stands out under the gauge's end and with nothing else", () => {
    expect(filletSizes(bowed(7, 7, 0.6)).gaugeThroat).toBeCloseTo(7 / Math.SQRT2 + 0.6, 3);
    // hollow: the end of 1.6 mm rests on its edges, 4 x 0.6 x (0.8 / 9.9)^2 = 0.0157 mm above the deepest place
    expect(filletSizes(bowed(7, 7, -0.6)).gaugeThroat).toBeCloseTo(7 / Math.SQRT2 - 0.6 + 0.0157, 3);
  });
});

describe("sizes of a section", () => {
  it("reads a mitre fillet with equal legs: a = z / sqrt 2, twice", () => {
    const sizes = filletSizes(flat(7, 7));
    expect(sizes.baseLeg).toBe(7);
    expect(sizes.standingLeg).toBe(7);
    expect(sizes.actualThroat).toBeCloseTo(7 / Math.SQRT2, 10);
    expect(sizes.designThroat).toBeCloseTo(7 / Math.SQRT2, 10);
    expect(sizes.convexity).toBeCloseTo(0, 10);
    expect(sizes.concavity).toBeCloseTo(0, 10);
    expect(sizes.asymmetry).toBe(0);
  });

  it("reads a quarter-inch leg as a throat of 0.177 inch", () => {
    expect(filletSizes(flat(6.35, 6.35)).actualThroat / 25.4).toBeCloseTo(0.177, 3);
  });

  it("reads unequal legs: the face is 4.8 from the corner for 6 x 8, and only a 6 x 6 triangle fits in", () => {
    for (const [base, standing] of [
      [6, 8],
      [8, 6],
    ]) {
      const sizes = filletSizes(flat(base, standing));
      expect(sizes.actualThroat).toBeCloseTo(4.8, 10);
      expect(sizes.designThroat).toBeCloseTo(6 / Math.SQRT2, 10);
      expect(sizes.asymmetry).toBe(2);
    }
  });

  it("does not count convexity in the design throat, but in the actual one", () => {
    const sizes = filletSizes(bowed(7, 7, 1.2));
    expect(sizes.designThroat).toBeCloseTo(7 / Math.SQRT2, 10);
    // the bulge is highest where the corner is nearest, or the flat toes' neighbourhood is nearer
    expect(sizes.actualThroat).toBeGreaterThan(7 / Math.SQRT2 + 0.9);
    expect(sizes.convexity).toBeCloseTo(1.2, 4);
    expect(sizes.concavity).toBe(0);
  });

  it("reads a hollow face by its throat: z / sqrt 2 less the sag, for both throats", () => {
    const sizes = filletSizes(bowed(8, 8, -0.9));
    expect(sizes.actualThroat).toBeCloseTo(8 / Math.SQRT2 - 0.9, 4);
    expect(sizes.designThroat).toBeCloseTo(8 / Math.SQRT2 - 0.9, 4);
    expect(sizes.concavity).toBeCloseTo(0.9, 4);
    expect(sizes.convexity).toBe(0);
  });

  it("finds the nearest place between two points of a coarse face", () => {
    expect(
      filletSizes([
        { along: 6, up: 0 },
        { along: 0, up: 8 },
      ]).actualThroat,
    ).toBeCloseTo(4.8, 10);
  });

  it("refuses less than a face", () => {
    expect(() => filletSizes([{ along: 1, up: 0 }])).toThrow("1 points");
  });
});
