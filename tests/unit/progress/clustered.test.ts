import { describe, expect, test } from "vitest";
import { clusterSpread, effectiveShare, shareForFew, twoSidedT, wilsonInterval } from "@/lib/math";
import {
  agreementOf,
  clusteredShare,
  EMPTY_PIECE_TALLY,
  falseCallRate,
  type Moments,
  shareOf,
  surelyAtMost,
} from "@/lib/progress";
import { randomStream } from "@/lib/random";

/** Pups that lived of each litter, C. S. Weil, Food and Cosmetics Toxicology 8, 1970: treated and not. */
const CONTROL = "13/13 12/12 9/9 9/9 8/8 8/8 12/13 11/12 9/10 9/10 8/9 11/13 4/5 5/7 7/10 7/10";
const TREATED = "12/12 11/11 10/10 9/9 10/11 9/10 9/10 8/9 8/9 4/5 7/9 4/7 5/10 3/6 3/10 0/7";
const littersOf = (text: string) =>
  text.split(" ").map((litter) => {
    const [sum, size] = litter.split("/").map(Number);
    return { sum, size };
  });
const sumOf = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0);

describe("clusters", () => {
  // J. N. K. Rao and A. J. Scott, Biometrics 48, 1992, work these litters with the linearised variance; the figures are that formula, worked apart from the program
  test.each([
    [CONTROL, 142, 158, 1.232],
    [TREATED, 112, 145, 3.953],
  ])(
    "litters: the design effect is that of the formula, a little more for few litters",
    (text, sum, size, published) => {
      const litters = littersOf(text);
      expect([sumOf(litters.map((one) => one.sum)), sumOf(litters.map((one) => one.size))]).toEqual([sum, size]);
      const p = sum / size;
      const independent = (p * (1 - p)) / size;
      const residuals = sumOf(litters.map((one) => (one.sum - p * one.size) ** 2));
      expect((16 / 15) * (residuals / size ** 2 / independent)).toBeCloseTo(published, 3);

      // the jackknife, each litter left out in turn
      const without = litters.map((one) => (sum - one.sum) / (size - one.size));
      const spread = clusterSpread(litters)!;
      expect(spread.variance).toBeCloseTo((15 / 16) * sumOf(without.map((ratio) => (ratio - p) ** 2)), 12);
      const designEffect = spread.variance / independent;
      expect(designEffect).toBeGreaterThan(published);
      expect(designEffect).toBeLessThan(1.1 * published);
      expect(effectiveShare(spread, independent)).toBeCloseTo(1 / designEffect, 12);
      // Student's t for few litters, 2.13 to 2.2 for 12 to 15 degrees of freedom, over 1.96
      expect(shareForFew(spread)).toBeCloseTo((1.96 / twoSidedT(0.95, spread.degrees)) ** 2, 4);
      expect(spread.degrees).toBeLessThan(15);
    },
  );

  test("of one cluster nothing is known", () => {
    expect(
      clusterSpread([
        { sum: 3, size: 7 },
        { sum: 0, size: 0 },
      ]),
    ).toBeNull();
  });
});

describe("a share of a class", () => {
  // how wide they are is common practice, no source
  test("of one learner is no surer than of two, and much less sure than that learner's own", () => {
    const width = (byLearner: readonly { count: number; of: number }[]) => {
      const { interval } = clusteredShare(byLearner);
      return interval ? interval.high - interval.low : 0;
    };
    const one = width([{ count: 14, of: 20 }]);
    expect(one).toBeGreaterThanOrEqual(
      width([
        { count: 7, of: 10 },
        { count: 7, of: 10 },
      ]),
    );
    const own = shareOf(14, 20).interval!;
    expect(one).toBeGreaterThan(own.high - own.low);
  });

  test("is the surer the more plainly it comes out: none of 200 no less than one or two of 200", () => {
    const high = (found: number) =>
      clusteredShare(Array.from({ length: 10 }, (_, at) => ({ count: Number(at < found), of: 20 }))).interval?.high;
    const highs = [0, 1, 2, 3].map((found) => high(found) ?? 1);
    expect(highs).toEqual(highs.toSorted((a, b) => a - b));
  });

  test("in order, never found by two learners comes before found 9 times of 20 by one", () => {
    const never = [
      { count: 0, of: 20 },
      { count: 0, of: 20 },
    ];
    expect(surelyAtMost(never)).toBeLessThan(surelyAtMost([{ count: 9, of: 20 }]));
    expect(surelyAtMost([])).toBe(1);
  });

  test("where everything was found is no surer than many independent finds, and where nothing was known is none", () => {
    const all = clusteredShare(Array.from({ length: 10 }, () => ({ count: 5, of: 5 })));
    expect(all.interval?.high).toBe(1);
    expect(all.interval?.low).toBeLessThan(wilsonInterval(50, 50).low);
    expect(all.interval?.low).toBeGreaterThan(wilsonInterval(10, 10).low);
    expect(clusteredShare([])).toMatchObject({ of: 0, share: null, interval: null });
  });

  // learners of two kinds, as many of either: the intraclass correlation is apart^2 / (p (1 - p))
  test.each([
    [12, 0.7, 0.2, 0.19],
    [20, 0.5, 0.2, 0.16],
    [30, 0.8, 0.1, 0.06],
  ])(
    "holds the true share in 93 of 100 of 500 simulated classes of %d, p %d, one apart by %d",
    (learners, p, apart, correlation) => {
      expect(apart ** 2 / (p * (1 - p))).toBeCloseTo(correlation, 2);
      const random = randomStream(`class ${learners}`);
      let [held, heldAsIfIndependent] = [0, 0];
      for (let run = 0; run < 500; run++) {
        const own = Array.from({ length: learners }, () => {
          const chance = random.chance(0.5) ? p + apart : p - apart;
          const of = 5 + random.integer(25);
          return { count: sumOf(Array.from({ length: of }, () => Number(random.chance(chance)))), of };
        });
        const { count, of, interval } = clusteredShare(own);
        const isIn = ({ low, high }: { low: number; high: number }) => Number(low <= p && p <= high);
        held += interval ? isIn(interval) : 0;
        heldAsIfIndependent += isIn(wilsonInterval(count, of));
      }
      expect(held).toBeGreaterThanOrEqual(465);
      expect(held).toBeLessThan(495);
      expect(heldAsIfIndependent).toBeLessThan(425);
    },
  );
});

describe("readings and calls of a class", () => {
  /** Differences in thousandths. */
  const momentsOf = (differences: readonly number[]): Moments => ({
    n: differences.length,
    sum: sumOf(differences),
    sumOfSquares: sumOf(differences.map((one) => one ** 2)),
  });

  test("the bias of a class is 0 in 93 of 100 of 500 simulated classes whose learners are each off in their own way", () => {
    const random = randomStream("hands");
    let [held, heldAsIfIndependent] = [0, 0];
    for (let run = 0; run < 500; run++) {
      const hands = Array.from({ length: 15 }, () => {
        const bias = random.normal(0, 150);
        return Array.from({ length: 4 + random.integer(12) }, () => Math.round(bias + random.normal(0, 200)));
      });
      const together = momentsOf(hands.flat());
      held += Number(agreementOf(together, hands.map(momentsOf))?.direction === "neither");
      heldAsIfIndependent += Number(agreementOf(together)?.direction === "neither");
    }
    expect(held).toBeGreaterThanOrEqual(465);
    expect(heldAsIfIndependent).toBeLessThan(400);
  });

  // J. M. Bland and D. G. Altman, Lancet i, 1986: the standard error of the mean difference is s / sqrt(n), with t of n - 1
  test("of five learners with one reading each the bias has the interval of five independent readings", () => {
    const readings = [100, 350, -200, 420, 260];
    const together = momentsOf(readings);
    const { bias, deviation, biasInterval } = agreementOf(
      together,
      readings.map((one) => momentsOf([one])),
    )!;
    // t of 4 degrees of freedom: 2.7764
    expect(biasInterval.high - bias).toBeCloseTo((2.7764 * deviation) / Math.sqrt(5), 4);
    expect(biasInterval).toEqual(agreementOf(together)?.biasInterval);
  });

  test("of one learner the bias says less of a class than of that learner", () => {
    const readings = momentsOf([100, 350, -200, 420, 260, 300, 310, 290]);
    const high = (own?: readonly Moments[]) => agreementOf(readings, own)?.biasInterval.high ?? 0;
    expect(high([readings])).toBeGreaterThan(high());
  });

  test("no false call by few learners says less than by as many metres of one rate, and no more than one call", () => {
    const high = (calls: readonly number[]) => {
      const own = calls.map((falseCalls) => ({ ...EMPTY_PIECE_TALLY, falseCalls, weldLength: 10e6 }));
      const all = { ...EMPTY_PIECE_TALLY, falseCalls: sumOf(calls), weldLength: own.length * 10e6 };
      return [falseCallRate(all, own).interval?.high ?? 0, falseCallRate(all).interval?.high ?? 0];
    };
    // the exact Poisson bound for none is 3.689, of 95 % on two sides
    expect(high([0, 0, 0])[1]).toBeCloseTo(3.689 / 30, 4);
    expect(high([0, 0, 0])[0]).toBeGreaterThan(3 * high([0, 0, 0])[1]);
    expect(high([0, 0, 0])[0]).toBeLessThan(high([1, 0, 0])[0]);
  });

  test("a class of one has a rate of false calls and no range", () => {
    const one = { ...EMPTY_PIECE_TALLY, falseCalls: 3, weldLength: 10e6 };
    expect(falseCallRate(one, [one, EMPTY_PIECE_TALLY])).toMatchObject({ perMetre: 0.3, interval: null });
    expect(falseCallRate(one, [one, { ...EMPTY_PIECE_TALLY, weldLength: 1 }]).interval).not.toBeNull();
  });

  test("false calls a metre: some call far more often than others, and the interval still holds the mean", () => {
    const random = randomStream("callers");
    let [held, heldAsIfIndependent] = [0, 0];
    for (let run = 0; run < 500; run++) {
      const own = Array.from({ length: 20 }, () => {
        // 0.5 or 1.5 a metre, over 6 m in steps of a tenth
        const rate = random.chance(0.5) ? 0.5 : 1.5;
        const falseCalls = sumOf(Array.from({ length: 60 }, () => Number(random.chance(rate / 10))));
        return { ...EMPTY_PIECE_TALLY, falseCalls, weldLength: 6e6 };
      });
      const total = sumOf(own.map((one) => one.falseCalls));
      const together = { ...EMPTY_PIECE_TALLY, falseCalls: total, weldLength: 120e6 };
      const isIn = (interval: { low: number; high: number } | null) =>
        Number(interval !== null && interval.low <= 1 && 1 <= interval.high);
      held += isIn(falseCallRate(together, own).interval);
      heldAsIfIndependent += isIn(falseCallRate(together).interval);
    }
    expect(held).toBeGreaterThanOrEqual(465);
    expect(heldAsIfIndependent).toBeLessThan(430);
  });
});
