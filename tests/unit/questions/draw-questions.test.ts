import { describe, expect, test } from "vitest";
import { BUILT_IN_CRITERIA } from "../../../lib/criteria";
import { drawQuestions, type Material, type Question } from "../../../lib/questions";
import { KINDS } from "../../../lib/questions/kinds";
import { randomStream } from "../../../lib/random";
import { DEFAULT_PAPER } from "../../../lib/results";
import { drawMaterial, FEW_ROWS } from "../../support/question-material";
import { syntheticFillet, syntheticPlate } from "../../support/synthetic-truths";

const materials = Array.from({ length: 300 }, (_, n) => drawMaterial(randomStream(`draw ${n}`)));
const drawn = materials.map((material, n) => ({
  material,
  questions: drawQuestions(material, DEFAULT_PAPER[material.section].questions, randomStream(`paper ${n}`)),
}));
const count = (questions: readonly Question[], source: string) =>
  questions.filter((one) => one.source === source).length;

describe("questions of a section", () => {
  test("ten of a plate and five of a fillet, of as many kinds, numbered in order", () => {
    for (const { material, questions } of drawn) {
      expect(questions.length).toBe(material.section === "plate" ? 10 : 5);
      expect(new Set(questions.map(({ kind }) => kind)).size).toBe(questions.length);
      expect(questions.map(({ id }) => id)).toEqual(questions.map((_, n) => `q${n + 1}`));
    }
  });

  test("those about the piece come first", () => {
    for (const { questions } of drawn) {
      const sources = questions.map(({ source }) => source);
      expect(sources.lastIndexOf("piece")).toBe(count(questions, "piece") - 1);
    }
  });

  test("every source has its part: two at least of ten, one of five, where the criteria have enough to ask", () => {
    for (const { material, questions } of drawn) {
      const least = material.section === "plate" ? 2 : 1;
      const sources = BUILT_IN_CRITERIA.slice(0, 6).includes(material.criteria)
        ? ["piece", "criteria", "drawing", "trade"]
        : ["piece", "drawing", "trade"];
      for (const source of sources) expect(count(questions, source), source).toBeGreaterThanOrEqual(least);
    }
  });

  test("no two are about one place", () => {
    for (const { questions } of drawn) {
      const places = questions.flatMap(({ place }) => place ?? []);
      for (const [n, one] of places.entries()) {
        for (const other of places.slice(n + 1)) {
          const apart = Math.max(one.start, other.start) - Math.min(one.end, other.end);
          expect(one.face !== other.face || apart > 5).toBe(true);
        }
      }
    }
  });

  test("none about the piece names what another one asks for", () => {
    for (const { questions } of drawn) {
      const ofPiece = questions.filter(({ source }) => source === "piece");
      for (const { id, stem } of ofPiece) {
        for (const other of ofPiece) {
          const sought = other.options[other.key].toLowerCase();
          expect(other.id !== id && stem.toLowerCase().includes(sought), `${stem} / ${sought}`).toBe(false);
        }
      }
    }
  });

  test("the same stream draws the same, another one something else", () => {
    const [material] = materials;
    const once = drawQuestions(material, 5, randomStream("one"));
    expect(drawQuestions(material, 5, randomStream("one"))).toEqual(once);
    expect(drawQuestions(material, 5, randomStream("two"))).not.toEqual(once);
  });

  test("on a sound piece by criteria of two rows there are still twenty to draw", () => {
    const bare: readonly Material[] = [
      {
        section: "plate",
        truth: { ...syntheticPlate(randomStream("bare")), items: [], clutter: [] },
        criteria: FEW_ROWS,
      },
      {
        section: "fillet",
        truth: { ...syntheticFillet(randomStream("bare")), items: [], clutter: [], dimensions: [], statements: [] },
        criteria: FEW_ROWS,
      },
    ];
    for (const material of bare) expect(drawQuestions(material, 20, randomStream("bare")).length).toBe(20);
  });

  test("of more than there are kinds left as many come as there are, each kind once and numbered in order", () => {
    const all = drawQuestions(materials[0], 99, randomStream("many"));
    expect(all.length).toBeGreaterThanOrEqual(20);
    expect(all.length).toBeLessThanOrEqual(KINDS.length);
    expect(new Set(all.map(({ kind }) => kind)).size).toBe(all.length);
    expect(all.map(({ id }) => id)).toEqual(all.map((_, n) => `q${n + 1}`));
    // asked for exactly as many, or for one fewer, it comes to that many
    expect(drawQuestions(materials[0], all.length, randomStream("many"))).toEqual(all);
    expect(drawQuestions(materials[0], all.length - 1, randomStream("many")).length).toBe(all.length - 1);
  });
});

test("what is from memory alone decides no question", () => {
  const rows = FEW_ROWS.rows.map((row) => ({ ...row, evidence: "memory" as const }));
  for (let n = 0; n < 50; n++) {
    const random = randomStream(`memory ${n}`);
    const material: Material = { section: "plate", truth: syntheticPlate(random), criteria: { ...FEW_ROWS, rows } };
    const questions = drawQuestions(material, 20, random).filter(({ source }) => source === "criteria");
    // what is left to ask is about types of which the set says nothing
    for (const { kind, options, key } of questions)
      expect([kind, options[key]]).toEqual(["which-outcome", "No limit given"]);
  }
});
