import { describe, expect, test } from "vitest";
import { logistic } from "@/lib/math";
import { chanceAt, detectionCurve, type SizedFinds } from "@/lib/progress";
import { randomStream } from "@/lib/random";

const rows = (sizes: readonly number[], found: readonly number[]): SizedFinds[] =>
  sizes.map((size, i) => ({ size, total: 1, found: found[i] }));

/** Twenty-four sizes of our own, whose fit and intervals were worked out in scipy 1.17 (minimize, minimize_scalar, brentq). */
const SIZES = [
  0.2, 0.2, 0.3, 0.3, 0.4, 0.4, 0.5, 0.5, 0.6, 0.6, 0.7, 0.8, 0.9, 1, 1.1, 1.2, 1.3, 1.5, 1.7, 2, 2.2, 2.5, 3, 3.5,
];
const FOUND = [0, 0, 0, 1, 0, 0, 0, 1, 0, 1, 1, 0, 1, 1, 0, 1, 1, 1, 1, 1, 1, 1, 1, 1];

/** A learner with a50 of 0.6 mm and a90 of 1.5 mm at so many pieces of log-normal sizes. */
function inspect(seed: string, count: number) {
  const random = randomStream(seed);
  const slope = Math.log(9) / Math.log(1.5 / 0.6);
  const finds = Array.from({ length: count }, (): SizedFinds => {
    const size = random.logNormal(0.8, 0.7);
    return { size, total: 1, found: Number(random.chance(logistic(slope * Math.log(size / 0.6)))) };
  });
  return detectionCurve(finds);
}

describe("the curve", () => {
  test("a fit to the logarithm of the size, against scipy", () => {
    const curve = detectionCurve(rows(SIZES, FOUND));
    if (curve.kind !== "curve") throw new Error(curve.why);
    expect(curve.intercept).toBeCloseTo(1.3294, 3);
    expect(curve.slope).toBeCloseTo(2.4444, 3);
    expect(curve.a50).toBeCloseTo(0.5805, 3);
    expect(curve.a90).toBeCloseTo(1.4262, 3);
    // the one-sided 95 % bound by likelihood ratio, chi-square 2.7055
    expect(curve.a9095).toBeCloseTo(4.1258, 3);
    expect(curve.sizes).toEqual({ low: 0.2, high: 3.5 });
    expect(chanceAt(curve, curve.a90)).toBeCloseTo(0.9, 10);
    expect(curve.a90Interval.low).toBeCloseTo(0.8139, 3);
    expect(curve.a90Interval.high).toBeCloseTo(6.3123, 3);
  });

  test("grouping equal sizes changes nothing", () => {
    const grouped = [...new Set(SIZES)].map((size) => ({
      size,
      total: SIZES.filter((other) => other === size).length,
      found: SIZES.filter((other, i) => other === size && FOUND[i] === 1).length,
    }));
    const [one, other] = [detectionCurve(grouped), detectionCurve(rows(SIZES, FOUND))];
    if (one.kind !== "curve" || other.kind !== "curve") throw new Error("no curve");
    expect(one.a90).toBeCloseTo(other.a90, 8);
    expect(one.a9095).toBeCloseTo(other.a9095!, 6);
  });

  test("a rise that may be none leaves the upper end open", () => {
    const sizes = Array.from({ length: 24 }, (_, i) => 0.5 + 0.1 * i);
    const found = sizes.map((_, i) => [0, 1, 1, 0, 1, 0, 1, 1][i % 8]);
    const curve = detectionCurve(rows(sizes, found));
    expect(curve).toMatchObject({ kind: "curve", a9095: null, a90Interval: { high: null } });
  });
});

describe("not enough yet", () => {
  test("says how many more", () => {
    expect(detectionCurve([])).toMatchObject({ kind: "not-enough", why: "few", needed: 20 });
    expect(detectionCurve(rows(SIZES.slice(0, 12), FOUND))).toMatchObject({ why: "few", needed: 8 });
    // plenty of them, but two misses
    expect(detectionCurve([{ size: 1, total: 40, found: 38 }])).toMatchObject({ why: "few", needed: 1 });
    expect(detectionCurve([{ size: 1, total: 40, found: 40 }])).toMatchObject({ why: "few", needed: 3 });
  });

  test("all of one size", () => {
    expect(detectionCurve([{ size: 1, total: 40, found: 20 }])).toMatchObject({ why: "one-size" });
  });

  test("separated: what lies between would tell", () => {
    const sizes = Array.from({ length: 20 }, (_, i) => 1 + i);
    const found = sizes.map((size) => Number(size > 10));
    expect(detectionCurve(rows(sizes, found))).toMatchObject({ why: "apart", between: { low: 10, high: 11 } });
    // touching at one size only has no finite curve either
    found[9] = 1;
    const touching = [...rows(sizes, found), { size: 10, total: 2, found: 1 }];
    expect(detectionCurve(touching)).toMatchObject({ why: "apart", between: { low: 10, high: 10 } });
  });

  test("small ones found and large ones missed", () => {
    const sizes = Array.from({ length: 20 }, (_, i) => 1 + i);
    expect(
      detectionCurve(
        rows(
          sizes,
          sizes.map((size) => Number(size < 8)),
        ),
      ),
    ).toMatchObject({ why: "no-rise" });
    expect(
      detectionCurve(
        rows(
          sizes,
          sizes.map((size) => Number(size % 7 < 3 || size < 6)),
        ),
      ),
    ).toMatchObject({
      why: "no-rise",
    });
  });
});

test("the interval of a90 covers the truth in at least 93 % of 1,000 learners, and a90/95 in 93 % to 97 %", () => {
  let [curves, covered, below] = [0, 0, 0];
  for (let n = 0; n < 1000; n++) {
    const curve = inspect(`coverage ${n}`, 60);
    if (curve.kind !== "curve") continue;
    curves++;
    const { low, high } = curve.a90Interval;
    covered += Number(low <= 1.5 && (high ?? Number.POSITIVE_INFINITY) >= 1.5);
    below += Number((curve.a9095 ?? Number.POSITIVE_INFINITY) >= 1.5);
  }
  expect(curves).toBeGreaterThan(950);
  expect(covered / curves).toBeGreaterThanOrEqual(0.93);
  expect(below / curves).toBeGreaterThanOrEqual(0.93);
  expect(below / curves).toBeLessThanOrEqual(0.97);
});
