import { describe, expect, test } from "vitest";
import {
  ANY_CLASS,
  type AnsweredItem,
  analyseItems,
  chanceToPass,
  classMarks,
  markDistribution,
  reliabilityOf,
} from "@/lib/progress";
import { randomStream } from "@/lib/random";

/** Ten students at ten questions, an example that is worked in teaching notes on KR-20; the sum of pq is 2.18, the variance 5.84. */
const TEN = [
  [1, 1, 1, 1, 1, 1, 0, 1, 1, 0],
  [1, 0, 1, 1, 0, 1, 1, 1, 0, 1],
  [1, 1, 1, 1, 0, 1, 1, 0, 0, 1],
  [0, 0, 1, 0, 0, 0, 1, 0, 0, 0],
  [0, 0, 0, 0, 0, 1, 0, 0, 1, 0],
  [1, 1, 1, 0, 1, 1, 1, 1, 1, 1],
  [1, 1, 0, 1, 1, 1, 0, 1, 1, 1],
  [1, 1, 1, 1, 1, 1, 1, 1, 0, 1],
  [0, 1, 0, 1, 1, 1, 1, 1, 0, 1],
  [1, 1, 0, 1, 1, 0, 1, 1, 1, 0],
];

describe("reliability", () => {
  test("KR-20 with the variance of the whole group", () => {
    const { alpha, deviation, mean, sem } = reliabilityOf(TEN);
    expect(mean).toBeCloseTo(6.6, 10);
    expect(deviation ** 2).toBeCloseTo(5.84, 10);
    expect(alpha).toBeCloseTo((10 / 9) * (1 - 2.18 / 5.84), 10);
    expect(alpha).toBeCloseTo(0.6963, 4);
    expect(sem).toBeCloseTo(Math.sqrt(5.84 * (1 - 0.6963)), 3);
  });

  test("parts that say the same are wholly reliable, totals that never vary say nothing", () => {
    const same = reliabilityOf([
      [1, 2, 4],
      [2, 3, 5],
      [5, 6, 8],
    ]);
    expect(same.alpha).toBeCloseTo(1, 12);
    expect(same.sem).toBeCloseTo(0, 6);
    expect(
      reliabilityOf([
        [1, 0],
        [0, 1],
      ]),
    ).toMatchObject({ alpha: null, sem: null });
  });
});

describe("items", () => {
  const rightOrWrong = (): AnsweredItem[] =>
    TEN[0].map((_, item) => ({
      id: `${item}`,
      key: 0,
      options: 4,
      chosen: TEN.map((row) => (row[item] === 1 ? 0 : 1)),
    }));

  test("facility as in the example: 0.7 0.7 0.6 0.7 0.6 0.8 0.7 0.7 0.5 0.6", () => {
    const shares = analyseItems(rightOrWrong()).map(({ facility }) => facility);
    expect(shares).toEqual([0.7, 0.7, 0.6, 0.7, 0.6, 0.8, 0.7, 0.7, 0.5, 0.6]);
  });

  test("discrimination is the correlation with the total of all others, as numpy.corrcoef has it", () => {
    const values = analyseItems(rightOrWrong()).map(({ discrimination }) => discrimination ?? Number.NaN);
    const expected = [0.7059, 0.7059, 0.0, 0.4736, 0.5839, 0.2861, -0.0274, 0.7059, -0.1236, 0.4759];
    for (const [n, value] of values.entries()) expect(value).toBeCloseTo(expected[n], 4);
  });

  /** 30 learners, the best third of whom choose what `ofBest` says in the last question; the other five go by rank. */
  function cohort(ofBest: number, ofOthers: number): AnsweredItem[] {
    const learners = Array.from({ length: 30 }, (_, learner) => learner);
    const ranked = Array.from(
      { length: 5 },
      (_, item): AnsweredItem => ({
        id: `ranked ${item}`,
        key: 2,
        options: 4,
        chosen: learners.map((learner) => (learner < 10 + 4 * item ? 2 : learner % 2)),
      }),
    );
    return [...ranked, { id: "last", key: 3, options: 4, chosen: learners.map((n) => (n < 10 ? ofBest : ofOthers)) }];
  }
  const lastOf = (items: readonly AnsweredItem[]) => analyseItems(items).find(({ id }) => id === "last")!;

  test("a key that the best pass by is suspected, for both reasons", () => {
    expect(lastOf(cohort(1, 3)).suspicions).toEqual(["distractor-beats-key", "negative"]);
    expect(lastOf(cohort(1, 3)).optionCounts[1]).toEqual({ option: 1, chosen: 10, chosenByBest: 10 });
  });

  test("a key that the best choose is not", () => {
    expect(lastOf(cohort(3, 1)).suspicions).toEqual([]);
    expect(lastOf(cohort(3, 1)).discrimination).toBeGreaterThan(0.5);
  });

  test("blank counts as wrong, not put as not there, and few learners raise no suspicion", () => {
    const [first] = analyseItems([
      { id: "a", key: 0, options: 2, chosen: [null, 0, undefined, 1] },
      { id: "b", key: 0, options: 2, chosen: [0, 1, 0, 0] },
    ]);
    expect(first).toMatchObject({ asked: 3, right: 1, blank: 1, suspicions: [], needed: 17 });
    expect(first.discrimination).toBeCloseTo(-1, 12);
  });
});

test("marks of a class, quartiles as R's type 7", () => {
  const marks = [0, 9.9, 10, 55, 69.9, 70, 88, 100].map((shown) => ({ shown, passed: shown >= 70 }));
  // numpy.quantile: 9.975, 62.45, 74.5
  expect(markDistribution(marks)).toMatchObject({ count: 8, passed: 3, tens: [2, 1, 0, 0, 0, 1, 1, 1, 1, 1] });
  expect(markDistribution(marks).lowerQuartile).toBeCloseTo(9.975, 10);
  expect(markDistribution(marks).median).toBeCloseTo(62.45, 10);
  expect(markDistribution(marks).upperQuartile).toBeCloseTo(74.5, 10);
  expect(markDistribution([])).toMatchObject({ count: 0, mean: null, median: null });
});

describe("chance to pass", () => {
  test("follows class before marks, and marks once there are some", () => {
    expect(chanceToPass([], 70)).toMatchObject({ expected: ANY_CLASS.mean, needed: 3 });
    const few = chanceToPass([95], 70);
    const many = chanceToPass([95, 94, 96, 95, 95], 70);
    expect(few.chance).toBeGreaterThan(chanceToPass([], 70).chance);
    expect(many.chance).toBeGreaterThan(few.chance);
    expect(many.interval.high - many.interval.low).toBeLessThan(few.interval.high - few.interval.low);
    expect(many.interval.low).toBeLessThan(many.chance);
  });

  test("the newest marks weigh most", () => {
    expect(chanceToPass([50, 60, 70, 80], 70).chance).toBeGreaterThan(chanceToPass([80, 70, 60, 50], 70).chance);
  });

  /** Levels and marks by the model of two scatters, marks cut off at 0 and 100; everybody's next mark is drawn as well. */
  function simulate(count: number, classes: number) {
    const said: { chance: number; passed: boolean }[] = [];
    let [inside, level] = [0, 0];
    for (let n = 0; n < classes; n++) {
      const random = randomStream(`class ${n} ${count}`);
      const [mean, between, within] = [random.uniform(55, 80), random.uniform(6, 18), random.uniform(5, 14)];
      const learners = Array.from({ length: 12 }, () => {
        const own = random.normal(mean, between);
        const draw = () => Math.round(10 * Math.min(100, Math.max(0, random.normal(own, within)))) / 10;
        return { own, marks: Array.from({ length: count }, draw), next: draw() };
      });
      const group = classMarks(learners.map(({ marks }) => marks));
      for (const { own, marks, next } of learners) {
        const { chance, interval } = chanceToPass(marks, 70, group);
        said.push({ chance, passed: next >= 70 });
        // the chance that somebody of this very level has
        const rising = simulatedChance(own, within);
        inside += Number(interval.low <= rising && rising <= interval.high);
        level++;
      }
    }
    return { said, inside: inside / level };
  }
  const simulatedChance = (own: number, within: number) => 1 / (1 + Math.exp((-1.702 * (own - 69.95)) / within));

  test.each([2, 4, 8])("after %d marks it comes true as often as it says", (count) => {
    const { said, inside } = simulate(count, 250);
    for (const [low, high] of [
      [0, 0.2],
      [0.2, 0.4],
      [0.4, 0.6],
      [0.6, 0.8],
      [0.8, 1],
    ]) {
      const bin = said.filter(({ chance }) => chance >= low && chance < high + (high === 1 ? 1 : 0));
      const mean = bin.reduce((sum, { chance }) => sum + chance, 0) / bin.length;
      const passed = bin.filter((one) => one.passed).length / bin.length;
      expect(bin.length).toBeGreaterThan(100);
      expect(Math.abs(mean - passed)).toBeLessThan(0.06);
    }
    const brier = said.reduce((sum, { chance, passed }) => sum + (chance - Number(passed)) ** 2, 0) / said.length;
    expect(brier).toBeLessThan(0.19);
    expect(inside).toBeGreaterThan(0.88);
  });
});
