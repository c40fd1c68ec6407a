import { describe, expect, test } from "vitest";
import { GAUGES, type GaugeKind } from "../../../lib/gauges";
import { asked, type Material, type Question, questionSchema } from "../../../lib/questions";
import { composeQuestion } from "../../../lib/questions/compose";
import { KINDS } from "../../../lib/questions/kinds";
import { randomStream } from "../../../lib/random";
import { drawMaterial } from "../../support/question-material";
import { CRITERIA } from "./second-opinion/criteria";
import { DRAWING } from "./second-opinion/drawing";
import { PIECE } from "./second-opinion/piece";
import { TRADE } from "./second-opinion/trade";

const OPINIONS = { ...PIECE, ...DRAWING, ...TRADE, ...CRITERIA };

/** Chi-square that 3 degrees of freedom exceed once in ten thousand times (tables of the distribution, any textbook). */
const CHI_SQUARE_3 = 21.11;

interface Posed {
  readonly question: Question;
  readonly material: Material;
}

/** Every kind that has anything to ask, on one made-up piece after the other. */
function pose(count: number): Posed[] {
  const posed: Posed[] = [];
  for (let n = 0; posed.length < count; n++) {
    const random = randomStream(`questions ${n}`);
    const material = drawMaterial(random);
    for (const kind of KINDS) {
      if (!kind.sections.includes(material.section)) continue;
      const question = composeQuestion(kind, "q1", material, random.child(kind.name));
      if (question) posed.push({ question, material });
    }
  }
  return posed;
}

const POSED = pose(10_000);

const chiSquare = (counts: readonly number[]): number => {
  const mean = counts.reduce((sum, count) => sum + count, 0) / counts.length;
  return counts.reduce((sum, count) => sum + (count - mean) ** 2 / mean, 0);
};

const opinionOn = ({ question, material }: Posed): boolean[] => OPINIONS[question.kind]({ question, ...material });

test("there are kinds enough, and a second opinion on each", () => {
  expect(KINDS.length).toBeGreaterThanOrEqual(30);
  expect(new Set(KINDS.map(({ name }) => name)).size).toBe(KINDS.length);
  expect(KINDS.map(({ name }) => name).filter((name) => !(name in OPINIONS))).toEqual([]);
  const asking = (source: string) => KINDS.filter((kind) => kind.source === source).length;
  expect(asking("piece")).toBeGreaterThanOrEqual(12);
  expect(asking("drawing")).toBeGreaterThanOrEqual(5);
  expect(asking("trade")).toBeGreaterThanOrEqual(8);
  expect(asking("criteria")).toBeGreaterThanOrEqual(6);
  for (const section of ["plate", "fillet"] as const) {
    expect(KINDS.filter(({ sections }) => sections.includes(section)).length, section).toBeGreaterThanOrEqual(18);
  }
});

describe("10,000 questions", () => {
  test("every kind is among them, not once or twice only", () => {
    for (const { name } of KINDS) {
      expect(POSED.filter(({ question }) => question.kind === name).length, name).toBeGreaterThan(15);
    }
  });

  test("exactly one option is right by another computation, and it is the key", () => {
    const wrong = POSED.filter((posed) => {
      const right = opinionOn(posed);
      return right.filter(Boolean).length !== 1 || !right[posed.question.key];
    });
    const told = wrong.slice(0, 5).map((posed) => [posed.question, opinionOn(posed), posed.material.criteria.id]);
    expect(told).toEqual([]);
  });

  test("four different options, in the shape in which they are stored", () => {
    for (const { question } of POSED) {
      expect(new Set(question.options).size).toBe(4);
      expect(questionSchema.safeParse(question).success, JSON.stringify(question)).toBe(true);
    }
  });

  test("the key stands in each of the four places alike", () => {
    const counts = [0, 1, 2, 3].map((key) => POSED.filter(({ question }) => question.key === key).length);
    expect(chiSquare(counts)).toBeLessThan(CHI_SQUARE_3);
  });

  test("what is asked tells neither kind, key, explanation nor place", () => {
    for (const { question } of POSED.slice(0, 100)) {
      expect(Object.keys(asked(question)).sort()).toEqual(["id", "options", "stem"]);
    }
  });

  test("every number asked of the piece lies on the scale of the gauge that is for it", () => {
    const gaugeOf: Readonly<Record<string, GaugeKind>> = {
      "cap-height": "height-gauge",
      "root-height": "height-gauge",
      "weld-width": "steel-rule",
      "longest-undercut": "steel-rule",
      "place-of-type": "steel-rule",
      "leg-at-station": "fillet-gauge",
      "throat-at-station": "fillet-gauge",
      "smallest-throat": "fillet-gauge",
    };
    const measured = POSED.filter(({ question }) => question.kind in gaugeOf);
    expect(measured.length).toBeGreaterThan(500);
    for (const { question } of measured) {
      const { range } = GAUGES[gaugeOf[question.kind]];
      const value = Number.parseFloat(question.options[question.key]);
      expect(value).toBeGreaterThanOrEqual(range?.lowest ?? 0);
      expect(value).toBeLessThanOrEqual(range?.highest ?? 0);
    }
  });

  test("the explanation names the right option and what each wrong one stands for", () => {
    for (const { question } of POSED) {
      expect(question.explanation.startsWith(`${question.options[question.key]} is right: `)).toBe(true);
      for (const option of question.options) expect(question.explanation).toContain(option);
      expect(question.explanation).not.toMatch(/undefined|NaN|null|\.\./);
      expect(question.stem).not.toMatch(/undefined|NaN|null/);
    }
  });
});

describe("no option gives itself away", () => {
  const isNumeric = ({ question }: Posed) =>
    question.options.every((option) => /^[\d.]+( (mm|lx|degrees))?$/.test(option));
  const words = POSED.filter((posed) => !isNumeric(posed));
  const numbers = POSED.filter(isNumeric);

  /** How often the key is the one with the most (or the least) of something; options that are alike share. */
  const share = (posed: readonly Posed[], of: (option: string) => number, best: (...all: number[]) => number) =>
    posed.reduce((sum, { question }) => {
      const all = question.options.map(of);
      const top = best(...all);
      return sum + (all[question.key] === top ? 1 / all.filter((one) => one === top).length : 0);
    }, 0) / posed.length;

  /** A quarter and what chance makes of it in so many questions, four standard deviations. */
  const byChance = (count: number) => 0.25 + 4 * Math.sqrt((0.25 * 0.75) / count);

  test("by its length: neither longest nor shortest more often than chance has it", () => {
    expect(share(words, (option) => option.length, Math.max)).toBeLessThan(byChance(words.length));
    expect(share(words, (option) => option.length, Math.min)).toBeLessThan(byChance(words.length));
  });

  test("by its rank among numbers: all four ranks come up, in every kind", () => {
    const ranks = (posed: readonly Posed[]) => {
      const counts = [0, 0, 0, 0];
      for (const { question } of posed) {
        const key = Number.parseFloat(question.options[question.key]);
        counts[question.options.filter((option) => Number.parseFloat(option) < key).length]++;
      }
      return counts;
    };
    const told = KINDS.flatMap(({ name }) => {
      const of = numbers.filter(({ question }) => question.kind === name);
      return of.length < 50 ? [] : [{ name, ranks: ranks(of).map((count) => Math.round((100 * count) / of.length)) }];
    });
    if (process.env.SHOW) console.log(JSON.stringify(told, null, 0), ranks(numbers));
    for (const { name, ranks: shares } of told)
      expect(Math.max(...shares), `${name}: ${shares}`).toBeLessThanOrEqual(60);
    for (const count of ranks(numbers)) expect(count / numbers.length).toBeGreaterThan(0.15);
  });

  test("by length in one kind: the key is longest or shortest in no kind nearly always", () => {
    const told = KINDS.flatMap(({ name }) => {
      const of = words.filter(({ question }) => question.kind === name);
      if (of.length < 50) return [];
      const length = (option: string) => option.length;
      return [{ name, longest: share(of, length, Math.max), shortest: share(of, length, Math.min) }];
    });
    if (process.env.SHOW)
      console.log(
        told.map(({ name, longest, shortest }) => `${name} ${longest.toFixed(2)} ${shortest.toFixed(2)}`).join("\n"),
        share(words, (o) => o.length, Math.max),
        share(words, (o) => o.length, Math.min),
      );
    for (const { name, longest, shortest } of told) expect(Math.max(longest, shortest), name).toBeLessThan(0.6);
  });
});
