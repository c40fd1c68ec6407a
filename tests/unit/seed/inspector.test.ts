import { describe, expect, test } from "vitest";
import { DEFAULT_CRITERIA } from "@/lib/criteria";
import { type ImperfectionType, imperfection, likeness } from "@/lib/imperfections";
import type { Question } from "@/lib/questions";
import { randomStream } from "@/lib/random";
import type { ButtTruth, TruthItem } from "@/lib/specimen";
import { DIFFICULTY, VISIBILITY } from "@/lib/specimen/difficulty";
import { DEMO_CLASSES } from "@/seed/demo/classes";
import { answersTo } from "@/seed/demo/inspector/answer";
import { chanceOf } from "@/seed/demo/inspector/detection";
import { inspect } from "@/seed/demo/inspector/inspect";
import { abilityAfter, LEARNING_DAYS, type Skill } from "@/seed/demo/inspector/skill";
import { syntheticPlate } from "../../support/synthetic-truths";

/** Sees and writes without a slip. */
const EXACT: Skill = {
  ability: 1,
  gain: 1,
  offsets: {},
  falseCalls: 0,
  confusion: 0,
  sizeBias: 0,
  sizeScatter: 0,
  placeScatter: 0,
  measuring: 0,
  knowledge: 1,
  sentencing: 1,
};

const PLATE = syntheticPlate(randomStream("a plate"));

/** A plate with nothing on it but one item, so many times its type's threshold. */
function plateWith(type: ImperfectionType, factor: number): ButtTruth {
  const { measure, threshold } = VISIBILITY[type];
  const value = factor * threshold;
  const isLine = imperfection(type).extent === "line";
  const length = measure === "length" ? value : isLine ? 20 : 0;
  const item: TruthItem = {
    id: "one",
    face: imperfection(type).faces.find((face) => face !== "fillet") ?? "cap",
    type,
    start: 100,
    end: 100 + length,
    across: 0,
    size: measure === "size" ? value : imperfection(type).size === null ? null : 1,
    width: measure === "width" ? value : 1,
    worst: [100, 0],
    outline: [],
    neutral: false,
  };
  return { ...PLATE, items: [item], clutter: [], joint: { ...PLATE.joint, process: "135" } };
}

const N = 1500;
/** So many inspections of one plate. */
const inspections = (truth: ButtTruth, skill: Skill, ability: number, name: string) =>
  Array.from({ length: N }, (_, n) => inspect(truth, DEFAULT_CRITERIA, skill, ability, randomStream(`${name}/${n}`)));

/**
 * Hoeffding's bound (Journal of the American Statistical Association 58, 1963, theorem 1): a share of N independent trials strays
 * from its mean by more than this with a probability below 2 exp(-2 N t^2) = 1e-6.
 */
const STRAY = Math.sqrt(Math.log(2 / 1e-6) / (2 * N));

describe("what a simulated inspector finds", () => {
  test.each([
    ["surface-pore", 0.7, 0.5],
    ["surface-pore", 1.5, 1],
    ["root-concavity", 1, 2],
    ["continuous-undercut", 1.3, 0],
    ["stray-arc", 0.8, 1.2],
  ] as const)(
    "of %s, %f times its threshold, at ability %f, follows the logistic curve in the logarithm of size",
    (type, factor, ability) => {
      const truth = plateWith(type, factor);
      const reports = inspections(truth, EXACT, ability, `${type}/${factor}`);
      const { perSize, perContrast, places } = DIFFICULTY;
      // written out by hand for a line of 20 mm and process 135, on the bead or in the root, both of which count the same
      const logit = ability - (places.bead - perSize * Math.log(factor) - perContrast * VISIBILITY[type].contrast);
      expect(places.root).toBe(places.bead);
      const share = reports.filter(({ calls }) => calls.length === 1).length / N;
      expect(Math.abs(share - 1 / (1 + Math.exp(-logit)))).toBeLessThan(STRAY);
    },
  );

  test("is less by its offset for a type that is overlooked, and for no other", () => {
    const [morning, evening] = DEMO_CLASSES;
    const [weak] = morning.learners;
    const [other] = evening.learners;
    const hollow = plateWith("root-concavity", 1);
    const pore = plateWith("surface-pore", 1);
    const chance = (truth: ButtTruth, { skill }: typeof weak) => chanceOf(truth.items[0], truth, 1.5, skill);
    const logit = (p: number) => Math.log(p / (1 - p));
    expect(logit(chance(hollow, weak)) - logit(chance(hollow, other))).toBeCloseTo(-2.4, 9);
    expect(chance(pore, weak)).toBe(chance(pore, other));
    const seen = inspections(hollow, { ...EXACT, offsets: weak.skill.offsets }, 1.5, "weak").filter(
      ({ calls }) => calls.length === 1,
    );
    expect(Math.abs(seen.length / N - chance(hollow, weak))).toBeLessThan(STRAY);
  });

  test("grows evenly while they learn, and no further", () => {
    const { skill } = DEMO_CLASSES[0].learners[1];
    expect(abilityAfter(skill, 0)).toBe(skill.ability);
    expect(abilityAfter(skill, LEARNING_DAYS / 2)).toBeCloseTo(skill.ability + skill.gain / 2, 9);
    expect(abilityAfter(skill, 10 * LEARNING_DAYS)).toBeCloseTo(skill.ability + skill.gain, 9);
  });
});

describe("what a simulated inspector writes", () => {
  const truth = plateWith("surface-pore", 2);
  const [item] = truth.items;

  test("names a look-alike as often as they confuse them, and nothing else", () => {
    const calls = inspections(truth, { ...EXACT, confusion: 0.3 }, 50, "confused").flatMap((report) => report.calls);
    expect(calls).toHaveLength(N);
    const wrong = calls.filter(({ type }) => type !== item.type);
    expect(Math.abs(wrong.length / N - 0.3)).toBeLessThan(STRAY);
    for (const { type } of wrong) expect(likeness(type ?? "spatter", item.type)).toBe(0.5);
  });

  test("reads sizes as high as their bias, with their scatter", () => {
    const skill = { ...EXACT, sizeBias: 0.3, sizeScatter: 0.2 };
    const sizes = inspections(truth, skill, 50, "sizes").flatMap(({ calls }) => calls.map(({ size }) => size ?? 0));
    const mean = sizes.reduce((sum, size) => sum + size, 0) / N;
    const deviation = Math.sqrt(sizes.reduce((sum, size) => sum + (size - mean) ** 2, 0) / N);
    // five standard errors of a mean, and of a standard deviation of a normal, 1/sqrt(2N): about 6e-7; tenths add a little
    expect(Math.abs(mean - 1.3 * (item.size ?? 0))).toBeLessThan((5 * 0.21) / Math.sqrt(N));
    expect(Math.abs(deviation - 0.2)).toBeLessThan(5 * (0.21 / Math.sqrt(2 * N)) + 0.004);
  });

  test("calls what is not there as often as they do: a Poisson count has its mean for variance", () => {
    const bare = { ...truth, items: [] };
    const counts = inspections(bare, { ...EXACT, falseCalls: 0.8 }, 0, "false").map(({ calls }) => calls.length);
    const mean = counts.reduce((sum, count) => sum + count, 0) / N;
    const variance = counts.reduce((sum, count) => sum + (count - mean) ** 2, 0) / N;
    expect(Math.abs(mean - 0.8)).toBeLessThan(5 * Math.sqrt(0.8 / N));
    // the variance of a sample's variance of a Poisson count: (m + 2 m^2) / N
    expect(Math.abs(variance - 0.8)).toBeLessThan(5 * Math.sqrt((0.8 + 2 * 0.64) / N));
  });

  test("is the same for the same stream, and right in every respect for whoever makes no slip", () => {
    const once = () => inspect(PLATE, DEFAULT_CRITERIA, DEMO_CLASSES[1].learners[0].skill, 1, randomStream("x"));
    expect(once()).toEqual(once());
    const { calls } = inspect(PLATE, DEFAULT_CRITERIA, EXACT, 50, randomStream("y"));
    expect(calls.map(({ type, start }) => [type, start])).toEqual(
      PLATE.items.filter(({ neutral }) => !neutral).map(({ type, start }) => [type, Math.round(start)]),
    );
  });

  test("answers right where they know it, and one in four of the others, wherever the key is", () => {
    const questions = Array.from({ length: N }, (_, n) => ({ id: `q${n}`, key: n % 4 }) as Question);
    const answers = answersTo(questions, { ...EXACT, knowledge: 0.6 }, randomStream("answers"));
    const right = questions.filter(({ id, key }) => answers[id] === key);
    expect(Math.abs(right.length / N - 0.7)).toBeLessThan(STRAY);
  });
});
