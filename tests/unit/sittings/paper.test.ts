import { describe, expect, test } from "vitest";
import { builtInCriteria } from "@/lib/criteria";
import { DEFAULT_PAPER, SECTIONS, type Section } from "@/lib/results";
import {
  addTimeSchema,
  changeFactorSchema,
  defaultPaper,
  type Paper,
  type PaperSection,
  PIECE_CHOICES,
  paperSchema,
  storedPaperSchema,
  USUAL_FACTORS,
  voidSchema,
} from "@/lib/sittings";
import { BLUEPRINTS, drawCleanFillet, FILLET_BLUEPRINTS } from "@/lib/specimen";

const paper = defaultPaper();
const [plate, fillet] = paper.sections as [PaperSection, PaperSection];

/** Every problem as "path: message". */
const problems = (written: unknown): string[] => {
  const read = paperSchema.safeParse(written);
  return read.success ? [] : read.error.issues.map(({ path, message }) => `${path.join(".")} | ${message}`);
};
const withPlate = (changes: object): unknown => ({ ...paper, sections: [{ ...plate, ...changes }, fillet] });
const withFillet = (changes: object): unknown => ({ ...paper, sections: [plate, { ...fillet, ...changes }] });

describe("the default paper", () => {
  test("can be read back as it is", () => {
    expect(paperSchema.parse(JSON.parse(JSON.stringify(paper)))).toEqual(paper);
  });

  test("is read from the store as well, even one of 40 questions as they could be saved before, but no more", () => {
    expect(storedPaperSchema.parse(paper)).toEqual(paper);
    expect(storedPaperSchema.safeParse(withPlate({ questionCount: 40 })).success).toBe(true);
    expect(storedPaperSchema.safeParse(withPlate({ questionCount: 41 })).success).toBe(false);
  });

  test("has the sections, times, pass marks and weights of lib/results, and criteria that there are", () => {
    expect(paper.sections.map(({ section }) => section)).toEqual([...SECTIONS]);
    for (const { section, minutes, passMark, weights, questionCount, criteriaId } of paper.sections) {
      expect({ minutes, passMark, weights, questions: questionCount }).toEqual(DEFAULT_PAPER[section]);
      expect(builtInCriteria(criteriaId)).toBeDefined();
    }
  });

  // 120 min, 30 min and 70 % are common practice, no source
  test("is a butt plate of 120 min and a fillet of 30 min, 70 % in each, one re-sit, one piece each, no help", () => {
    expect([plate.minutes, fillet.minutes, plate.passMark, fillet.passMark]).toEqual([120, 30, 70, 70]);
    expect(paper).toMatchObject({ forms: "own", feedback: "on-release", borderlinePiece: false, resits: 1 });
    expect([plate.aids.asksReading, fillet.aids.asksReading]).toEqual([false, false]);
  });
});

describe("pieces that can be chosen are pieces that can be made", () => {
  test("the blueprints are those of lib/specimen, by name", () => {
    expect(Object.keys(PIECE_CHOICES.plate.blueprints)).toEqual(Object.keys(BLUEPRINTS));
    expect(Object.keys(PIECE_CHOICES.fillet.blueprints)).toEqual(Object.keys(FILLET_BLUEPRINTS));
  });

  test.each(Object.entries(BLUEPRINTS))("of %s: every process, position and thickness", (name, { joint }) => {
    expect(PIECE_CHOICES.plate.blueprints[name]?.thickness).toEqual(joint.thickness);
    expect(PIECE_CHOICES.plate.processes).toEqual(joint.processes);
    expect(PIECE_CHOICES.plate.positions).toEqual(joint.positions);
  });

  test("as many types can be asked for as a blueprint asks for indications", () => {
    for (const [name, { sections }] of Object.entries(BLUEPRINTS)) {
      const slots = Object.values(sections).flatMap((section) => section.slots);
      const count = slots.reduce((sum, slot) => sum + slot.count, 0);
      expect(PIECE_CHOICES.plate.blueprints[name]?.indications, name).toBe(count);
    }
    for (const [name, { indications }] of Object.entries(FILLET_BLUEPRINTS)) {
      expect(PIECE_CHOICES.fillet.blueprints[name]?.indications, name).toBe(indications[1]);
    }
  });

  test("a paper asks for types or leaves them out, and keeps either as it is", () => {
    const types = { includes: ["surface-pore", "root-fusion"], among: ["overlap"] };
    const asking = withPlate({ piece: { ...plate.piece, types } });
    expect(storedPaperSchema.parse(JSON.parse(JSON.stringify(asking)))).toEqual(asking);
    expect(paperSchema.parse(paper).sections.map(({ piece }) => "types" in piece)).toEqual([false, false]);
  });

  test("of fillets: 500 drawn ones have every process, position and base plate that can be chosen, and no other", () => {
    const joints = Array.from({ length: 500 }, (_, n) => drawCleanFillet(`choice ${n}`).joint);
    const all = <T>(of: (joint: (typeof joints)[number]) => T) => new Set(joints.map(of));
    expect(all(({ process }) => process)).toEqual(new Set(PIECE_CHOICES.fillet.processes));
    expect(all(({ position }) => position)).toEqual(new Set(PIECE_CHOICES.fillet.positions));
    const thickness = [...all(({ baseThickness }) => baseThickness)];
    for (const blueprint of Object.values(PIECE_CHOICES.fillet.blueprints)) {
      expect(blueprint.thickness).toEqual([Math.min(...thickness), Math.max(...thickness)]);
    }
  });
});

describe("what is no paper is told by field", () => {
  test.each<[string, unknown, string]>([
    ["no name", { ...paper, name: "  " }, "name | name: 1 to 80 characters"],
    ["a long name", { ...paper, name: "x".repeat(81) }, "name | name: 1 to 80 characters"],
    ["another version", { ...paper, version: 2 }, "version | version: 1"],
    ["no sections", { ...paper, sections: [] }, "sections | sections: at least one"],
    [
      "a field of somebody else's",
      { ...paper, colour: "red" },
      " | paper: no field named colour; the fields are version, name, sections, forms, feedback, borderlinePiece, breakMinutes, resits",
    ],
    [
      "one section twice",
      { ...paper, sections: [plate, plate] },
      "sections.1.section | section: each once; plate stands there already",
    ],
    ["three sections", { ...paper, sections: [plate, fillet, plate] }, "sections | sections: at most 2, each once"],
    ["a section of no piece", withPlate({ section: "pipe" }), "sections.0.section | section: one of plate, fillet"],
    ["4 minutes", withPlate({ minutes: 4 }), "sections.0.minutes | minutes: a whole number from 5 to 480"],
    ["481 minutes", withPlate({ minutes: 481 }), "sections.0.minutes | minutes: a whole number from 5 to 480"],
    ["half a minute", withPlate({ minutes: 30.5 }), "sections.0.minutes | minutes: a whole number from 5 to 480"],
    ["minutes in letters", withPlate({ minutes: "120" }), "sections.0.minutes | minutes: a whole number from 5 to 480"],
    [
      "a pass mark of two decimals",
      withFillet({ passMark: 69.95 }),
      "sections.1.passMark | passMark: 0 to 100, at most one decimal, for example 69.5",
    ],
    [
      "a pass mark beyond 100",
      withFillet({ passMark: 100.1 }),
      "sections.1.passMark | passMark: 0 to 100, at most one decimal, for example 69.5",
    ],
    [
      "a weight below 0",
      withPlate({ weights: { ...plate.weights, dimensions: -1 } }),
      "sections.0.weights.dimensions | dimensions: 0 to 1000",
    ],
    [
      "no weight at all",
      withPlate({ weights: Object.fromEntries(Object.keys(plate.weights).map((part) => [part, 0])) }),
      "sections.0.weights | weights: at least one part above 0",
    ],
    [
      "a blueprint that there is none of",
      withPlate({ piece: { ...plate.piece, blueprint: "hard" } }),
      "sections.0.piece.blueprint | blueprint: one of practice, assessment, final-mock, clean in the section plate",
    ],
    [
      "a plate's blueprint for a fillet",
      withFillet({ piece: { ...fillet.piece, blueprint: "assessment" } }),
      "sections.1.piece.blueprint | blueprint: one of practice, clean in the section fillet",
    ],
    [
      "TIG on a fillet",
      withFillet({ piece: { ...fillet.piece, process: "141" } }),
      "sections.1.piece.process | process: drawn, 111, 135, 136 in the section fillet",
    ],
    [
      "a process of no number",
      withPlate({ piece: { ...plate.piece, process: "999" } }),
      "sections.0.piece.process | process: one of drawn, 111, 135, 136, 141",
    ],
    [
      "PB on a plate",
      withPlate({ piece: { ...plate.piece, position: "PB" } }),
      "sections.0.piece.position | position: drawn, PA, PC, PF, PE in the section plate",
    ],
    [
      "5 mm",
      withPlate({ piece: { ...plate.piece, thickness: 5 } }),
      "sections.0.piece.thickness | thickness: drawn, or 6 to 25 mm for assessment",
    ],
    [
      "8 mm of a final mock",
      withPlate({ piece: { ...plate.piece, blueprint: "final-mock", thickness: 8 } }),
      "sections.0.piece.thickness | thickness: drawn, or 12 to 20 mm for final-mock",
    ],
    [
      "8.5 mm",
      withPlate({ piece: { ...plate.piece, thickness: 8.5 } }),
      "sections.0.piece.thickness | thickness: drawn, or whole mm",
    ],
    [
      "a type of no catalogue",
      withPlate({ piece: { ...plate.piece, types: { includes: ["hole"], among: "any" } } }),
      "sections.0.piece.types.includes.0 | includes: types of the catalogue, such as surface-pore",
    ],
    [
      "types without what may come besides",
      withPlate({ piece: { ...plate.piece, types: { includes: ["overlap"] } } }),
      "sections.0.piece.types.among | among: any, or a list of types",
    ],
    [
      "a type of the root on a fillet",
      withFillet({ piece: { ...fillet.piece, types: { includes: ["overlap", "root-fusion"], among: "any" } } }),
      "sections.1.piece.types.includes | includes: types that come in the section fillet, which root-fusion does not",
    ],
    [
      "a type of fillets among those on a plate",
      withPlate({ piece: { ...plate.piece, types: { includes: [], among: ["excessive-throat"] } } }),
      "sections.0.piece.types.among | among: types that come in the section plate, which excessive-throat does not",
    ],
    [
      "a type twice",
      withPlate({ piece: { ...plate.piece, types: { includes: ["overlap", "overlap"], among: "any" } } }),
      "sections.0.piece.types.includes | includes: each once; overlap stands there already",
    ],
    [
      "a type on a clean plate",
      withPlate({ piece: { ...plate.piece, blueprint: "clean", types: { includes: ["overlap"], among: "any" } } }),
      "sections.0.piece.types.includes | includes: at most 0 types with clean",
    ],
    [
      "an id with capitals",
      withPlate({ criteriaId: "ISO" }),
      "sections.0.criteriaId | criteriaId: the id of a set of criteria, small letters, digits, dots and hyphens",
    ],
    [
      "21 questions",
      withPlate({ questionCount: 21 }),
      "sections.0.questionCount | questionCount: a whole number from 0 to 20",
    ],
    [
      "a table half open",
      withPlate({ aids: { ...plate.aids, criteriaTable: "ajar" } }),
      "sections.0.aids.criteriaTable | criteriaTable: one of open, closed",
    ],
    ["a lens of 1", withPlate({ aids: { ...plate.aids, lens: 1 } }), "sections.0.aids.lens | lens: true or false"],
    ["forms of a kind", { ...paper, forms: "any" }, "forms | forms: one of own, same"],
    [
      "the same piece with feedback at once",
      { ...paper, forms: "same", feedback: "at-once" },
      "feedback | feedback: on-release where all sit the same piece, since whoever is done first would see what is on it",
    ],
    ["a break of a day", { ...paper, breakMinutes: 1440 }, "breakMinutes | breakMinutes: a whole number from 0 to 120"],
    ["re-sits without end", { ...paper, resits: 6 }, "resits | resits: a whole number from 0 to 5"],
  ])("%s", (_case, written, problem) => {
    expect(problems(written)).toEqual([problem]);
  });

  test("several at once, each at its field", () => {
    expect(
      problems({
        ...paper,
        forms: "any",
        sections: [
          { ...plate, minutes: 1 },
          { ...fillet, passMark: -1 },
        ],
      }),
    ).toHaveLength(3);
  });

  test("questions that carry weight but are none", () => {
    const weights = { ...Object.fromEntries(Object.keys(plate.weights).map((part) => [part, 10])), questions: 10 };
    // before questions are a part of a section, its weights have no such field
    const expected =
      "questions" in plate.weights
        ? [
            "sections.0.questionCount | questionCount: at least 1 where questions carry weight, or give questions the weight 0",
          ]
        : ["sections.0.weights | weights: no field named questions; the fields are indications, dimensions"];
    expect(problems(withPlate({ questionCount: 0, weights }))).toEqual(expected);
  });

  test.each<[string, Partial<Paper>]>([
    ["one section", { sections: [fillet] }],
    ["the fillet first", { sections: [fillet, plate] }],
    ["the same piece for all", { forms: "same" }],
    ["feedback at once", { feedback: "at-once" }],
    ["no re-sit", { resits: 0 }],
  ])("%s is a paper", (_case, changes) => {
    expect(problems({ ...paper, ...changes })).toEqual([]);
  });

  test.each([
    ["plate", { process: "141", position: "PE", thickness: 6 }],
    ["fillet", { process: "136", position: "PB", thickness: 15 }],
  ] as const)("a piece of %s fixed in everything is one", (section: Section, fixed) => {
    const sections = paper.sections.map((one) =>
      one.section === section ? { ...one, piece: { ...one.piece, ...fixed } } : one,
    );
    expect(problems({ ...paper, sections })).toEqual([]);
  });
});

describe("what a tutor fills in", () => {
  test.each([...USUAL_FACTORS, 1.33, 5])("%d is extra time", (factor) => {
    expect(changeFactorSchema.safeParse({ factor, reason: "as agreed" }).success).toBe(true);
  });

  test.each([0.99, 5.01, 1.333, Number.NaN, "2"])("%s is none", (factor) => {
    const read = changeFactorSchema.safeParse({ factor, reason: "as agreed" });
    expect(read.error?.issues[0]?.message).toBe("factor: 1 to 5 with at most two decimals, for example 1.25");
  });

  test.each([0, 241, 1.5])("%d minutes are not given", (minutes) => {
    const read = addTimeSchema.safeParse({ minutes, reason: "lamp" });
    expect(read.error?.issues[0]?.message).toBe("minutes: a whole number from 1 to 240");
  });

  test("a reason is asked for", () => {
    expect(voidSchema.safeParse({ reason: " " }).error?.issues[0]?.message).toBe("reason: 1 to 200 characters");
  });
});
