import { describe, expect, it } from "vitest";
import { onFace, seenPlace } from "@/lib/bench";

/** A mitre fillet with legs of 8 mm, seen into the corner and square on its base plate: plain geometry. */
const LEG = 8;
const intoCorner = (_x: number, y: number) => Math.max(Math.abs(y), LEG / Math.SQRT2);
const onPlate = (_x: number, y: number) => Math.max(0, LEG - Math.abs(y));

describe("a place on a fillet", () => {
  it("is the same one however the piece is turned", () => {
    for (const y of [0, 1, 3.5, LEG / Math.SQRT2, 12]) {
      for (const [aspect, sign] of [
        ["base", 1],
        ["standing", -1],
      ] as const) {
        const seen = seenPlace(aspect, { x: 50, y: sign * y }, intoCorner);
        expect(seen?.x).toBe(50);
        const back = seen && onFace(aspect, seen, onPlate);
        expect(back?.y).toBeCloseTo(sign * y, 9);
      }
    }
  });

  it("lies from the root corner along its plate as far as geometry says", () => {
    // the toe of a leg of 8 mm
    expect(seenPlace("base", { x: 0, y: LEG / Math.SQRT2 }, intoCorner)?.y).toBeCloseTo(LEG, 9);
    // the middle of the face lies 4 mm out from either plate
    expect(seenPlace("standing", { x: 0, y: 0 }, intoCorner)?.y).toBeCloseTo(-LEG / 2, 9);
  });

  it("is hidden where it lies on the face of the other plate", () => {
    expect(seenPlace("base", { x: 0, y: -20 }, intoCorner)).toBeNull();
    expect(seenPlace("standing", { x: 0, y: 20 }, intoCorner)).toBeNull();
  });

  it("needs no change on a face that is looked at as it lies", () => {
    const place = { x: 3, y: -2 };
    expect(onFace("root", place, null)).toBe(place);
    expect(seenPlace("fillet", place, null)).toBe(place);
  });
});
