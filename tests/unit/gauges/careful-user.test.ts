import { describe, expect, it } from "vitest";
import {
  contactAt,
  drawnBack,
  explainReading,
  GAUGES,
  type GaugePlacement,
  type Heights,
  readRule,
  setDown,
  slideTo,
} from "@/lib/gauges";
import { randomStream } from "@/lib/random";
import { bead, filletOf, groove, plateOf } from "./support/analytic";

/**
 * Somebody who sets the gauge down a little beside the place, slides in small steps until it touches, reads the scale, and
 * takes the middle of three readings.
 */
function carefulReading(heights: Heights, wanted: GaugePlacement, name: string): number {
  const random = randomStream(`careful ${name}`);
  const hand = random.child("hand");
  const readings = Array.from({ length: 3 }, () => {
    const placement = {
      ...wanted,
      x: wanted.x + hand.normal(0, 0.5),
      y: wanted.y + hand.normal(0, 0.1),
      turn: wanted.turn + hand.normal(0, 1.5),
    };
    const standing = setDown(heights, placement, random.child("cap"));
    if (!standing.ok) throw new Error(standing.code);
    const away = contactAt(standing, standing.stop + 1) === "clear" ? 1 : -1;
    let position = drawnBack(standing);
    while (contactAt(standing, position) === "clear") {
      const next = slideTo(standing, position - 0.05 * away);
      if (next === position) throw new Error("it is stuck");
      position = next;
    }
    expect(contactAt(standing, position)).toBe("touching");
    return explainReading(placement.kind, position).value;
  });
  return readings.sort((a, b) => a - b)[1];
}

/** How far 40 careful readings miss the size they are after. */
function missesOf(heights: Heights, wanted: GaugePlacement, size: number): readonly number[] {
  return Array.from({ length: 40 }, (_, n) => {
    const shifted = { ...wanted, x: wanted.x + n };
    return Math.abs(carefulReading(heights, shifted, `${wanted.kind} ${n}`) - size);
  });
}

const spot = { x: 90, y: 0, turn: 90 };

// size and what a careful user may miss it by: common practice, no source
describe("a careful user is within tolerance", () => {
  const cases: readonly [string, Heights, GaugePlacement, number, number][] = [
    [
      "cap height",
      plateOf(bead(2.4, 8)),
      { ...spot, kind: "height-gauge", stance: "straddling", near: 18, spacing: 36 },
      2.4,
      0.3,
    ],
    [
      "undercut",
      plateOf((x, y) => bead(2, 8)(x, y) + groove(0.9, 1.5, 9.6)(x, y)),
      { ...spot, y: 9.6, kind: "depth-gauge", stance: "one-side", near: 8, spacing: 14 },
      0.9,
      0.3,
    ],
    [
      "misalignment",
      plateOf((x, y) => bead(2, 8)(x, y) - (y > 0 ? 0 : 1.3)),
      { ...spot, y: -14, kind: "hook-gauge", reach: 26 },
      1.3,
      0.3,
    ],
    ["leg", filletOf(8, 7, 0.4), { ...spot, kind: "fillet-gauge", use: "leg" }, 8, 0.5],
    ["throat", filletOf(8, 8), { ...spot, kind: "fillet-gauge", use: "throat" }, 8 / Math.SQRT2, 0.5],
  ];
  it.each(cases)("of %s", (_name, heights, wanted, size, tolerance) => {
    const misses = missesOf(heights, wanted, size);
    expect(Math.max(...misses)).toBeLessThan(tolerance);
    // and the noise is there: not everybody reads the size itself
    expect(misses.filter((miss) => miss > GAUGES[wanted.kind].step / 2).length).toBeGreaterThan(0);
  });

  it("of a length by the rule", () => {
    const plate = plateOf(() => 0);
    for (let n = 0; n < 40; n++) {
      const random = randomStream(`rule ${n}`);
      const [from, to] = [40 + n, 73 + 2 * n].map((x) => {
        const read = readRule(plate, { x: 0, y: 8, turn: 0 }, { x, y: 3 }, random);
        if (!read.ok) throw new Error(read.code);
        return read.reading;
      });
      // twice the eye's error, 0.3 mm each: within 4 standard deviations and the step of 0.5
      expect(Math.abs(to - from - (33 + n))).toBeLessThan(4 * 0.3 * Math.SQRT2 + 0.5);
    }
  });
});
