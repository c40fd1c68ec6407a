import { expect, test } from "vitest";
import { DEFAULT_PAPER, SECTIONS } from "@/lib/results";
import { standardErrorOf } from "@/lib/sittings";
import {
  BLUEPRINTS,
  expectPiece,
  FILLET_BLUEPRINTS,
  PASS_ABILITY,
  predictFillet,
  predictPlate,
  type SectionTruth,
} from "@/lib/specimen";

const mean = (values: readonly number[]) => values.reduce((sum, one) => sum + one, 0) / values.length;
const seeds = Array.from({ length: 40 }, (_, n) => `standard error ${n}`);
const DRAWN: Readonly<Record<(typeof SECTIONS)[number], () => (readonly SectionTruth[])[]>> = {
  plate: () =>
    seeds.flatMap((seed) => {
      const drawn = predictPlate(seed, BLUEPRINTS.assessment);
      return drawn.ok ? [drawn.faces] : [];
    }),
  fillet: () => seeds.map((seed) => [predictFillet(seed, FILLET_BLUEPRINTS.practice)]),
};

test.each(SECTIONS)("of indications in the section %s is what is expected of pieces that are drawn", (section) => {
  const sems = DRAWN[section]().map((faces) => expectPiece(faces, PASS_ABILITY).sem);
  const weights = { indications: 5, dimensions: 0, sentences: 0, questions: 0 };
  // 40 pieces leave about half a mark of chance in their mean
  expect(Math.abs(standardErrorOf(section, weights) - mean(sems))).toBeLessThan(1);
});

test("goes by the share of indications: 60 of 100 marks of the usual plate", () => {
  expect(standardErrorOf("plate", DEFAULT_PAPER.plate.weights)).toBeCloseTo(0.6 * 11.3, 9);
});
