import { describe, expect, it } from "vitest";
import {
  bandOutline,
  betweenEdges,
  longestStretch,
  measureCrown,
  measureHole,
  measureHollow,
  measureMaskExtent,
  measureOverlap,
  measureToeGroove,
  plateLine,
  stepBetweenPlates,
} from "../../../../lib/specimen/measure";
import { columnX, rowY } from "../../../../lib/surface";
import { distorted, faceOf, GRID, parabola } from "./synthetic";

/** One pixel: nothing in a sampled field is known better. */
const PIXEL = 1 / GRID.perMm;

describe("plate line", () => {
  it("is the plate itself where the plate is straight", () => {
    const face = faceOf((_, y) => 0.02 * y - 0.3);
    const line = plateLine(face.strip, 1, 30, 9);
    expect(line(0)).toBeCloseTo(-0.3, 5);
    expect(line(20)).toBeCloseTo(0.1, 5);
  });

  it("is not drawn off by a globule on the plate", () => {
    const globule = (x: number, y: number) => {
      const d = Math.hypot(x - 30, y - 16);
      return d < 0.9 ? 0.7 * Math.sqrt(1 - (d / 0.9) ** 2) : 0;
    };
    const line = plateLine(faceOf((x, y) => 0.02 * y + globule(x, y)).strip, 1, 30, 9);
    expect(line(9)).toBeCloseTo(0.18, 2);
    expect(line(18)).toBeCloseTo(0.36, 2);
  });
});

describe("groove along a toe", () => {
  // sharp V with its bottom 0.4 mm outside the toe, 1 mm to each side, deepening along x as half a sine from 15 to 45 mm
  const depthAt = (x: number) => (x > 15 && x < 45 ? 0.8 * Math.sin((Math.PI * (x - 15)) / 30) : 0);
  const plates = distorted(1.2, 0.7);
  const groove = (x: number, y: number) => Math.max(0, depthAt(x) * (1 - Math.abs(y - 9.4) / 1));
  const face = faceOf((x, y) => plates(y) + parabola(y, 9, 2) - groove(x, y));
  const found = measureToeGroove(face, { side: 1, range: { from: 5, to: 55 }, threshold: 0.1, bridge: 1 });

  it("has the depth of the V below the sloping plate", () => {
    // the bottom may lie half a pixel from a pixel's centre: the V is then cut off by 0.0625 of its depth
    expect(found?.size).toBeGreaterThan(0.8 * (1 - PIXEL / 2) - 0.005);
    expect(found?.size).toBeLessThan(0.805);
    expect(found?.worst[0]).toBeCloseTo(30, 0);
    expect(found?.worst[1]).toBeCloseTo(9.4, 1);
  });

  it("starts and ends where it is deeper than the threshold", () => {
    const edge = (30 / Math.PI) * Math.asin(0.1 / 0.8);
    expect(Math.abs((found?.start ?? 0) - (15 + edge))).toBeLessThan(0.3);
    expect(Math.abs((found?.end ?? 0) - (45 - edge))).toBeLessThan(0.3);
  });

  it("is as wide as the span deeper than the threshold", () => {
    // inside the toe the cap rises 0.44 mm per mm as well, so the inner flank ends earlier than the V's own
    const outer = 9.4 + 1 - 0.1 / 0.8;
    const inner = 9.4 - (0.8 - 0.1) / 0.8;
    expect(found?.width).toBeGreaterThan(outer - 9.4);
    expect(found?.width).toBeLessThan(outer - inner + 2 * PIXEL);
  });

  it("is not found on the sound side", () => {
    expect(measureToeGroove(face, { side: -1, range: { from: 5, to: 55 }, threshold: 0.1, bridge: 1 })).toBeNull();
  });

  it("is one chain over short sound stretches and the longest link over long ones", () => {
    const chain = faceOf((x, y) => {
      const bite = [
        [10, 14],
        [17, 23],
        [40, 44],
      ].some(([a, b]) => x > a && x < b);
      return bite && y > 9 && y < 10 ? -0.5 : 0;
    });
    const search = { side: 1 as const, range: { from: 5, to: 55 }, threshold: 0.1 };
    const joined = measureToeGroove(chain, { ...search, bridge: 4 });
    expect([joined?.start, joined?.end]).toEqual([10, 23]);
    const alone = measureToeGroove(chain, { ...search, bridge: 1 });
    expect([alone?.start, alone?.end]).toEqual([17, 23]);
  });
});

describe("crown", () => {
  it("is the height above the line between the plates at the toes, whatever the misalignment", () => {
    for (const step of [0, 1.5]) {
      const chord = (y: number) => -step * (0.5 - y / 18);
      const plates = (y: number) => (Math.abs(y) < 9 ? chord(y) : y < 0 ? -step : 0);
      const face = faceOf((x, y) => plates(y) + parabola(y, 9, x > 20 && x < 40 ? 3.6 : 2));
      const found = measureCrown(face, { range: { from: 10, to: 50 }, threshold: 3, bridge: 1 });
      expect(found?.size).toBeCloseTo(3.6, 2);
      expect(found?.start).toBeCloseTo(20, 1);
      expect(found?.end).toBeCloseTo(40, 1);
      // higher than 3 of 3.6 mm: |y| < 9 sqrt(1 - 3/3.6)
      expect(Math.abs((found?.width ?? 0) - 18 * Math.sqrt(1 - 3 / 3.6))).toBeLessThan(2 * PIXEL + 0.01);
    }
  });
});

describe("hollow", () => {
  it("is the depth below the line between the two plates", () => {
    const face = faceOf((x, y) => 0.01 * y - (Math.abs(x - 30) < 12 ? parabola(y, 2.5, 0.9) : 0), 2.5);
    const found = measureHollow(face, betweenEdges(2.5), 1, {
      range: { from: 10, to: 50 },
      threshold: 0.15,
      bridge: 1,
    });
    expect(found?.size).toBeCloseTo(0.9, 2);
    expect(found?.start).toBeCloseTo(18, 1);
    expect(found?.end).toBeCloseTo(42, 1);
    expect(Math.abs(found?.across ?? 9)).toBeLessThan(PIXEL);
  });
});

describe("hole", () => {
  it("gives the depth and the mouth of a round pit", () => {
    // cone of radius 1 and depth 1.5: deeper than 35 % within radius 0.65
    const face = faceOf((x, y) => 0.3 * Math.min(0, Math.hypot(x - 30, y - 2) / 1 - 1) * 5);
    const hole = measureHole(face.strip, 30, 2, 1);
    expect(hole?.depth).toBeGreaterThan(1.5 * (1 - 0.09) - 0.01);
    expect(hole?.depth).toBeLessThanOrEqual(1.5);
    expect(Math.abs((hole?.diameter ?? 0) - 1.3)).toBeLessThan(0.1);
    expect(hole?.middle[0]).toBeCloseTo(30, 1);
    expect(hole?.middle[1]).toBeCloseTo(2, 1);
  });

  // the same cone on a flank as steep as a cap's near its toe: depth below the flank and mouth stay what they were
  it("is read square to sloping ground, and a globule beside it does not tilt the ground", () => {
    const cone = (x: number, y: number) => 1.5 * Math.min(0, Math.hypot(x - 30, y - 2) - 1);
    const globule = (x: number, y: number) => (Math.hypot(x - 31.4, y - 2.9) < 0.4 ? 0.5 : 0);
    const level = measureHole(faceOf(cone).strip, 30, 2, 1);
    const sloping = measureHole(faceOf((x, y) => cone(x, y) + globule(x, y) + 0.2 * x - 0.5 * y).strip, 30, 2, 1);
    expect(sloping?.depth).toBeCloseTo(level?.depth as number, 3);
    expect(sloping?.diameter).toBeCloseTo(level?.diameter as number, 2);
    expect(sloping?.middle[1]).toBeCloseTo(2, 1);
  });

  it("is not found on a flat plate", () => {
    expect(measureHole(faceOf(() => 0.2).strip, 30, 2, 1)).toBeNull();
  });
});

describe("mask", () => {
  const maskOf = (inside: (x: number, y: number) => boolean) => {
    const mask = new Float32Array(GRID.columns * GRID.rows);
    for (let j = 0, k = 0; j < GRID.rows; j++)
      for (let i = 0; i < GRID.columns; i++, k++) mask[k] = inside(columnX(GRID, i), rowY(GRID, j)) ? 1 : 0;
    return mask;
  };
  const region = { x0: 5, x1: 55, y0: -10, y1: 15 };

  it("has the extent of its largest patch, near pieces included and far ones not", () => {
    const mask = maskOf(
      (x, y) =>
        (x > 10 && x < 18 && y > 4 && y < 5) ||
        (x > 18.5 && x < 22 && y > 4 && y < 6) ||
        (x > 30 && x < 34 && y > 4 && y < 6),
    );
    const extent = measureMaskExtent(GRID, mask, 0.5, region, 1);
    expect(extent).toMatchObject({ start: 10, end: 22, low: 4, high: 6, width: 2, area: 8 + 7 });
  });

  it("is nothing where the mask is nowhere above the threshold", () => {
    expect(
      measureMaskExtent(
        GRID,
        maskOf(() => false),
        0.5,
        region,
      ),
    ).toBeNull();
  });
});

describe("misalignment", () => {
  it("is the step at the centre, without the angular distortion", () => {
    const plates = distorted(1.5, 1.3);
    expect(
      stepBetweenPlates(
        faceOf((_, y) => plates(y)),
        30,
      ),
    ).toBeCloseTo(1.3, 3);
  });
});

describe("overlap", () => {
  it("is the reach of a rolled lip beyond the sound toe", () => {
    const edge = (x: number) => 9 + (x > 20 && x < 40 ? 2 : 0);
    const face = faceOf((x, y) => {
      const s = Math.abs(y) / (y > 0 ? edge(x) : 9);
      return s < 1 ? 2 * (1 - s ** (y > 0 && edge(x) > 9 ? 8.5 : 2)) : 0;
    });
    const found = measureOverlap(face, {
      side: 1,
      range: { from: 15, to: 45 },
      threshold: 0.5,
      bridge: 1.5,
    });
    expect(Math.abs((found?.size ?? 0) - 2)).toBeLessThan(0.3);
    expect(found?.start).toBeCloseTo(20, 0);
    expect(found?.end).toBeCloseTo(40, 0);
    const sound = faceOf((_, y) => parabola(y, 9, 2));
    expect(measureOverlap(sound, { side: 1, range: { from: 15, to: 45 }, threshold: 0.5, bridge: 1.5 })).toBeNull();
  });
});

describe("stretches and outlines", () => {
  const flags = (text: string) => [...text].map((c) => c === "x");

  it("bridges gaps up to a length and takes the longest", () => {
    expect(longestStretch(flags("..xx.xx....xxxx.."), 0)).toEqual({ first: 11, last: 14 });
    expect(longestStretch(flags("..xx.xx....xxxx.."), 1)).toEqual({ first: 2, last: 6 });
    expect(longestStretch(flags("..xx.xx....xxxx.."), 4)).toEqual({ first: 2, last: 14 });
    expect(longestStretch(flags("...."), 3)).toBeNull();
  });

  it("encloses every span", () => {
    const spans = Array.from({ length: 40 }, (_, n) => ({
      x: 10 + n / 8,
      low: 3 - (n % 3) / 8,
      high: 4 + (n % 5) / 8,
    }));
    const outline = bandOutline(spans, PIXEL / 2);
    for (const { x, low, high } of spans) {
      expect(isInside([x, low + 0.01], outline)).toBe(true);
      expect(isInside([x, high - 0.01], outline)).toBe(true);
    }
    expect(isInside([10.5, 5.2], outline)).toBe(false);
    expect(bandOutline(spans.slice(0, 1), PIXEL / 2)).toHaveLength(4);
  });
});

/** Point in polygon by counting crossings (textbook). */
function isInside([x, y]: readonly [number, number], polygon: readonly (readonly [number, number])[]): boolean {
  let inside = false;
  for (let n = 0, m = polygon.length - 1; n < polygon.length; m = n++) {
    const [ax, ay] = polygon[n];
    const [bx, by] = polygon[m];
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
  }
  return inside;
}
