import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import {
  explainReading,
  explainVernier,
  missOfLine,
  readVernier,
  scaleLines,
  TENTHS,
  vernierLines,
} from "@/lib/gauges";

/** Which line misses least, by trying them all. */
function lineThatCoincides(position: number, parts: number): number {
  const misses = Array.from({ length: parts }, (_, n) => {
    const at = position + n * (1 - 1 / parts);
    return Math.abs(at - Math.round(at));
  });
  return misses.indexOf(Math.min(...misses));
}

describe("vernier of 9 mm in 10 parts", () => {
  it("has ten parts of 0.9 mm", () => {
    expect(vernierLines()).toEqual([0, 0.9, 1.8, 2.7, 3.6, 4.5, 5.4, 6.3, 7.2, 8.1, 9]);
  });

  // worked examples in the manner of school physics books (least count 0.1 mm; from memory)
  test.each([
    [23.7, 23, 7],
    [8.3, 8, 3],
    [0.4, 0, 4],
    [12, 12, 0],
    [3.96, 4, 0],
    [3.94, 3, 9],
  ])("%f mm is main scale %i and line %i", (position, main, line) => {
    expect(readVernier(position)).toMatchObject({ main, line });
  });

  it("counts up from the line below, on the negative side too", () => {
    expect(readVernier(-2.3)).toEqual({ main: -3, line: 7, value: -2.3 });
    expect(readVernier(-0.04)).toEqual({ main: 0, line: 0, value: 0 });
  });

  it("names the line that misses least", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -20, max: 300, noNaN: true }),
        fc.integer({ min: 2, max: 50 }),
        (position, parts) => {
          const vernier = { parts, unit: 1 };
          const { line, value } = readVernier(position, vernier);
          const best = lineThatCoincides(position, parts);
          // midway between two lines either is right
          const slack = Math.abs(
            Math.abs(missOfLine(position, best, vernier)) - Math.abs(missOfLine(position, line, vernier)),
          );
          expect(slack).toBeLessThan(1e-6);
          expect(Math.abs(value - position)).toBeLessThanOrEqual(0.5 / parts + 1e-6);
        },
      ),
    );
  });

  it("of 49 mm in 50 parts reads fiftieths", () => {
    expect(readVernier(31.46, { parts: 50, unit: 1 })).toEqual({ main: 31, line: 23, value: 31.46 });
  });

  it("coincides in one line only, but for the last with the first", () => {
    const misses = vernierLines(TENTHS).map((_, n) => Math.abs(missOfLine(5.3, n)));
    expect(misses.flatMap((miss, n) => (miss < 0.01 ? [n] : []))).toEqual([3]);
    const whole = vernierLines(TENTHS).map((_, n) => Math.abs(missOfLine(5, n)));
    expect(whole.flatMap((miss, n) => (miss < 0.01 ? [n] : []))).toEqual([0, 10]);
  });
});

describe("what does it read?", () => {
  it("adds the main scale and the line", () => {
    const { value, words } = explainReading("height-gauge", 2.71);
    expect(value).toBe(2.7);
    expect(words).toContain("past 2 mm");
    expect(words).toContain("line 7");
    expect(words).toContain("2 + 0.7 = 2.7 mm");
  });

  it("warns that a vernier counts up below nought", () => {
    expect(explainVernier(-2.3, TENTHS).words).toContain("−3 + 0.7 = −2.3 mm");
  });

  it("takes the nearest line where there is no vernier", () => {
    expect(explainReading("depth-gauge", 0.94).value).toBe(0.9);
    expect(explainReading("steel-rule", 41.8)).toMatchObject({ value: 42 });
  });
});

test("lines of a scale", () => {
  expect(scaleLines(-1, 1, 0.5)).toEqual([-1, -0.5, 0, 0.5, 1]);
  expect(scaleLines(0, 8, 0.1)).toHaveLength(81);
});
