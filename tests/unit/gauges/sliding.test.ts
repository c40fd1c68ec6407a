import { describe, expect, test } from "vitest";
import { contactAt, drawnBack, type GaugePlacement, nearerBy, setDown, slideTo } from "@/lib/gauges";
import { randomStream } from "@/lib/random";
import { bead, groove, plateOf } from "./support/analytic";

const spot = { x: 100, y: 0, turn: 90 };
const CASES: readonly [string, ReturnType<typeof plateOf>, GaugePlacement][] = [
  [
    "height gauge, which counts upward",
    plateOf(bead(2.4, 8)),
    { ...spot, kind: "height-gauge", stance: "straddling", near: 18, spacing: 36 },
  ],
  [
    "depth gauge, which counts downward",
    plateOf(groove(1, 2)),
    { ...spot, kind: "depth-gauge", stance: "one-side", near: 8, spacing: 14 },
  ],
];

describe("pushed towards the metal by however much", () => {
  test.each(CASES)("%s", (_name, heights, placement) => {
    const standing = setDown(heights, placement, randomStream("pushed"));
    if (!standing.ok) throw new Error(standing.code);
    const start = drawnBack(standing);
    expect(contactAt(standing, start)).toBe("clear");
    // in steps it comes nearer and nearer, and ends where a single push without end does
    let position = start;
    for (let n = 0; n < 300; n++) {
      const next = slideTo(standing, nearerBy(standing, position, 0.1));
      expect(Math.abs(next - standing.stop)).toBeLessThanOrEqual(Math.abs(position - standing.stop));
      position = next;
    }
    expect(contactAt(standing, position)).toBe("touching");
    expect(slideTo(standing, nearerBy(standing, start, Number.POSITIVE_INFINITY))).toBe(position);
    expect(slideTo(standing, nearerBy(standing, position, Number.NEGATIVE_INFINITY))).toBe(start);
  });
});
