import { describe, expect, it } from "vitest";
import { randomStream } from "@/lib/random";
import { cutScoops, drawScoops } from "@/lib/specimen/imperfections/grinding-scoops";
import { plateAround } from "@/lib/specimen/imperfections/plate-plane";
import { sampleAt } from "@/lib/surface";
import { bareField, SMALL } from "./bare-field";

const BOX = { x0: 12, x1: 28, y0: -5, y1: 5 };

describe("plane of the plate round a mark", () => {
  it("is the plate's own, whatever lies in the box and in spite of globules beside it", () => {
    const field = bareField((x, y) => {
      const inside = x > BOX.x0 && x < BOX.x1 && Math.abs(y) < 5;
      const globule = Math.hypot(x - 11, y - 2) < 0.5 ? 0.5 : 0;
      return 0.012 * x - 0.02 * y + (inside ? -0.4 : globule);
    });
    const plane = plateAround(field, BOX);
    for (const [x, y] of [
      [20, 0],
      [13, -4],
      [27, 4],
    ])
      expect(plane(x, y)).toBeCloseTo(0.012 * x - 0.02 * y, 2);
  });
});

describe("grinding", () => {
  it.each([0.2, 0.5, 0.9])("takes the whole depth that was asked, %s mm", (depth) => {
    const ratios = Array.from({ length: 10 }, (_, n) => {
      const field = bareField((x) => 0.01 * x);
      const plate = (x: number) => 0.01 * x;
      cutScoops(field, drawScoops(randomStream(`grind-${n}`), 16, 6, depth), 20, 0, plate);
      let deepest = 0;
      for (let x = 8; x < 32; x += 0.125)
        for (let y = -6; y < 6; y += 0.125) deepest = Math.max(deepest, plate(x) - sampleAt(SMALL, field.z, x, y));
      return deepest / depth;
    });
    const mean = ratios.reduce((a, b) => a + b, 0) / ratios.length;
    expect(mean).toBeGreaterThan(0.9);
    expect(mean).toBeLessThan(1.15);
  });
});
