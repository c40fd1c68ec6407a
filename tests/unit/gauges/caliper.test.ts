import { describe, expect, it } from "vitest";
import { GAUGES, type GaugePlacement, type Heights, heightsOfFace, setDown } from "@/lib/gauges";
import { randomStream } from "@/lib/random";
import { generateFace } from "@/lib/specimen/generate";
import { drawRecipe } from "@/lib/specimen/recipe";
import { type Formula, plateOf, STEADY } from "./support/analytic";
import { apartByTrying } from "./support/plain-gauge";

/** A plate between two formulas: its upper face and its lower one. */
const sheetOf = (upper: Formula, lower: Formula): Heights => ({ ...plateOf(upper), underside: lower });
const overA = (y = 55): GaugePlacement => ({ kind: "caliper", x: 120, y, turn: 90 });

function apart(heights: Heights, placement: GaugePlacement): number {
  const standing = setDown(heights, placement, STEADY);
  if (!standing.ok) throw new Error(standing.code);
  return standing.exact;
}

describe("what stands between a caliper's jaws", () => {
  it("is the thickness of a flat plate, from either edge and however far in", () => {
    const sheet = sheetOf(
      () => 0,
      () => -10.4,
    );
    for (const y of [45, 55, 70, -45, -70]) {
      expect(apart(sheet, { kind: "caliper", x: 120, y, turn: y > 0 ? 90 : 270 })).toBeCloseTo(10.4, 4);
    }
  });

  it("is the thickness square to a bent plate, not the height through it", () => {
    // a plate 8 mm thick that rises at 3 degrees: through it, it is 8 / cos 3 degrees high
    const slope = Math.tan((3 * Math.PI) / 180);
    const high = 8 / Math.cos((3 * Math.PI) / 180);
    const sheet = sheetOf(
      (_x, y) => slope * Math.abs(y),
      (_x, y) => slope * Math.abs(y) - high,
    );
    expect(apart(sheet, overA())).toBeCloseTo(8, 4);
  });

  it("grows by a lump under a jaw at its tip or at the edge only as far as the jaws must open for it", () => {
    // two jaws that tip freely on a wedge of 1 mm over 20 mm: the height of the wedge at its steep end, square to its face
    const wedge = sheetOf(
      (_x, y) => 0.05 * (75 - y),
      () => -10,
    );
    expect(apart(wedge, overA())).toBeCloseTo(11 / Math.hypot(1, 0.05), 2);
    const lump = sheetOf(
      (x, y) => (Math.hypot(x - 120, y - 65) < 1 ? 0.5 : 0),
      () => -10,
    );
    expect(apart(lump, overA())).toBeGreaterThan(10.4);
    expect(apart(lump, { ...overA(), x: 126 })).toBeCloseTo(10, 4);
  });

  it("is refused with one face only, too far in, and off square", () => {
    const code = (heights: Heights, placement: GaugePlacement) => {
      const standing = setDown(heights, placement, STEADY);
      return standing.ok ? "reads" : standing.code;
    };
    const sheet = sheetOf(
      () => 0,
      () => -10,
    );
    expect(
      code(
        plateOf(() => 0),
        overA(),
      ),
    ).toBe("one-face");
    expect(code(sheet, overA(20))).toBe("cannot-reach");
    expect(code(sheet, { ...overA(), turn: 60 })).toBe("not-square");
    expect(code(sheet, { ...overA(), x: 310 })).toBe("off-plate");
    const thick = sheetOf(
      () => 0,
      () => -41,
    );
    expect(code(thick, overA())).toBe("out-of-range");
  });

  it("is what trying every tilt over both faces of a generated plate finds, and near what the sheet was rolled to", () => {
    const recipe = drawRecipe("caliper");
    const [cap, root] = (["cap", "root"] as const).map((face) => generateFace(recipe, face).surface);
    const random = randomStream("caliper placements");
    for (const [surface, other] of [
      [cap, root],
      [root, cap],
    ]) {
      const heights = heightsOfFace(surface, { surface: other, facesApart: recipe.rolled });
      const found = Array.from({ length: 60 }, () => {
        const side = random.pick([1, -1]);
        const turn = (side > 0 ? 90 : 270) + random.uniform(-8, 8);
        const placement = {
          kind: "caliper",
          x: random.uniform(4, 296),
          y: side * random.uniform(45, 71),
          turn,
        } as const;
        const read = apart(heights, placement);
        expect(Math.abs(read - apartByTrying(heights, placement)), JSON.stringify(placement)).toBeLessThan(0.02);
        return read - recipe.rolled;
      });
      const middle = found.sort((a, b) => a - b)[30];
      expect(Math.abs(middle)).toBeLessThan(0.15);
    }
  });

  it("is read with noise of its own, and in tenths", () => {
    const sheet = sheetOf(
      () => 0,
      () => -10.4,
    );
    const stops = Array.from({ length: 400 }, (_, n) => {
      const standing = setDown(sheet, { ...overA(), x: 50 + n / 4 }, randomStream("caliper noise"));
      if (!standing.ok) throw new Error(standing.code);
      expect(Math.abs(standing.reading * 10 - Math.round(standing.reading * 10))).toBeLessThan(1e-9);
      return standing.stop - 10.4;
    });
    const deviation = Math.sqrt(stops.reduce((sum, one) => sum + one * one, 0) / stops.length);
    // of 400 the deviation itself varies by 1/sqrt(800): four times that
    expect(Math.abs(deviation - GAUGES.caliper.noise)).toBeLessThan((4 * GAUGES.caliper.noise) / Math.sqrt(800));
  });
});
