import { beforeAll, describe, expect, it } from "vitest";
import { type Inspected, inspected } from "../support/careful/inspected";

/** More of them, with the mean error of everything that is measured, in `npm run bench -- careful`. */
const SEEDS = Array.from({ length: 3 }, (_, n) => `careful ${n}`);

// What is there is found and named; places, sizes and dimensions are measured with the gauges, noise and all. The limits
// are the project's own (tolerances and marks of the rule), no outside source.
describe("a careful inspector of butt plates", () => {
  let all: readonly Inspected[] = [];
  beforeAll(() => {
    all = SEEDS.map((seed) => inspected("butt", seed));
  }, 3_600_000);

  it("measures every dimension within its tolerance, and not by knowing it", () => {
    const lines = all.flatMap(({ seed, dimensions }) => dimensions.map((line) => ({ seed, ...line })));
    const outside = lines.filter(({ error, tolerance }) => error === null || error > tolerance + 1e-9);
    expect(outside).toEqual([]);
    expect(lines.filter(({ error }) => (error ?? 0) > 0.05).length).toBeGreaterThan(lines.length / 10);
  });

  it("measures nearly every size within its tolerance", () => {
    const sizes = all.flatMap((one) => one.sizes);
    const outside = sizes.filter(({ isWithin }) => !isWithin);
    // a slit narrower than the depth gauge's point is felt less deep than it is
    expect(outside.length, JSON.stringify(outside)).toBeLessThanOrEqual(sizes.length / 10);
  });

  it("averages at least 98 marks", () => {
    const marks = all.map(({ mark }) => mark);
    expect(marks.reduce((sum, mark) => sum + mark, 0) / marks.length).toBeGreaterThanOrEqual(98);
    expect(Math.min(...marks)).toBeGreaterThanOrEqual(95);
  });
});
