import { describe, expect, test } from "vitest";
import { EXECUTION_CLASSES, en1090, iso5817, QUALITY_LEVELS } from "../../lib/criteria";
import { drawQuestions, type Material } from "../../lib/questions";
import { composeQuestion } from "../../lib/questions/compose";
import { KINDS } from "../../lib/questions/kinds";
import { randomStream } from "../../lib/random";
import { generateFilletSpecimen, generateSpecimen } from "../../lib/specimen";
import { CRITERIA } from "../unit/questions/second-opinion/criteria";
import { DRAWING } from "../unit/questions/second-opinion/drawing";
import { PIECE } from "../unit/questions/second-opinion/piece";
import { TRADE } from "../unit/questions/second-opinion/trade";

const OPINIONS = { ...PIECE, ...DRAWING, ...TRADE, ...CRITERIA };
const SETS = [...QUALITY_LEVELS.map((level) => iso5817({ level, edition: 2014 })), ...EXECUTION_CLASSES.map(en1090)];
const SEEDS = ["asked 1", "asked 2"];

const truths: readonly Omit<Material, "criteria">[] = [
  ...SEEDS.map((seed) => ({ section: "plate" as const, truth: generateSpecimen(seed).truth })),
  ...SEEDS.map((seed) => ({ section: "fillet" as const, truth: generateFilletSpecimen(seed).truth })),
];

describe.each(truths)("questions on a specimen: $section", ({ section, truth }) => {
  const all = SETS.flatMap((criteria) =>
    Array.from({ length: 8 }, (_, n) => ({
      material: { section, truth, criteria },
      random: randomStream(`${criteria.id} ${n}`),
    })),
  );

  test("of every kind that has anything to ask exactly one option is right by another computation", () => {
    const asking = new Set<string>();
    for (const { material, random } of all) {
      for (const kind of KINDS) {
        const question = kind.sections.includes(section)
          ? composeQuestion(kind, "q1", material, random.child(kind.name))
          : null;
        if (!question) continue;
        asking.add(kind.name);
        const right = OPINIONS[kind.name]({ question, truth, criteria: material.criteria });
        expect(right, JSON.stringify(question)).toEqual([0, 1, 2, 3].map((n) => n === question.key));
      }
    }
    const ofPiece = KINDS.filter(({ name, source }) => source === "piece" && asking.has(name)).map(({ name }) => name);
    expect(ofPiece.length, ofPiece.join(", ")).toBeGreaterThanOrEqual(5);
  });

  test("a paper's questions can be drawn, three and one of them about the piece at least", () => {
    for (const { material, random } of all) {
      const questions = drawQuestions(material, section === "plate" ? 10 : 5, random);
      const ofPiece = questions.filter(({ source }) => source === "piece").length;
      expect(ofPiece).toBeGreaterThanOrEqual(section === "plate" ? 3 : 1);
    }
  });
});
