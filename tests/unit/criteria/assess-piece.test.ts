import { describe, expect, test } from "vitest";
import {
  assess,
  assessPiece,
  BUILT_IN_CRITERIA,
  builtInCriteria,
  CAUTION,
  criteriaSchema,
  findingText,
  type Indication,
  iso5817,
  measuredSize,
  OUTCOMES,
  QUANTITY_FACTS,
} from "@/lib/criteria";
import { IMPERFECTION_TYPES, imperfection } from "@/lib/imperfections";
import { at, pieceOf, seen } from "./pieces";

const LEVEL_C = iso5817({ level: "C", edition: 2014 });
const LEVEL_B = iso5817({ level: "B", edition: 2014 });
const LEVEL_D = iso5817({ level: "D", edition: 2014 });
/** Row 1.17 level C, t over 3 mm: only as a short imperfection. */
const hollow = (start: number, end: number) => seen("root-concavity", start, end, { depth: 0.3 });

// ISO 5817:2014, terms: weld of 100 mm or longer: 25 mm in the worst 100 mm; shorter: 25 % of its length
describe("short imperfections", () => {
  test.each<[string, Indication[], number, "accept" | "reject"]>([
    ["25 mm in 100 mm", [hollow(50, 75)], 300, "accept"],
    ["25.1 mm in 100 mm", [hollow(50, 75.1)], 300, "reject"],
    ["10 + 15 mm in one 100 mm", [hollow(0, 10), hollow(85, 100)], 300, "accept"],
    ["10 + 15.1 mm in one 100 mm", [hollow(0, 10), hollow(84.9, 100)], 300, "reject"],
    ["10 + 15 mm, of which 1 mm lies outside every common 100 mm", [hollow(0, 10), hollow(86, 101)], 300, "accept"],
    ["20 mm in each 100 mm", [hollow(0, 20), hollow(100, 120), hollow(200, 220)], 300, "accept"],
    ["20 and 20 mm, 90 mm from start to start", [hollow(0, 20), hollow(90, 110)], 300, "reject"],
    ["weld of 80 mm: 20 mm", [hollow(10, 30)], 80, "accept"],
    ["weld of 80 mm: 20.1 mm", [hollow(10, 30.1)], 80, "reject"],
    ["weld of 100 mm: 25 mm", [hollow(10, 35)], 100, "accept"],
    ["weld of 99 mm: 24.75 mm", [hollow(10, 34.75)], 99, "accept"],
    ["weld of 99 mm: 25 mm", [hollow(10, 35)], 99, "reject"],
  ])("%s", (_, indications, length, outcome) => {
    expect(assessPiece(indications, pieceOf({}, length), LEVEL_C).outcome).toBe(outcome);
  });

  test("the worst 100 mm are named, and every indication in a broken stretch is rejected, no other", () => {
    const indications = [hollow(10, 20), hollow(150, 168), hollow(230, 245)];
    const { sentences, together } = assessPiece(indications, pieceOf(), LEVEL_C);
    expect(sentences.map(({ outcome }) => outcome)).toEqual(["accept", "reject", "reject"]);
    // 150 to 168 and 230 to 245 lie within 95 mm: together 33 mm
    expect(together[0]).toMatchObject({
      outcome: "reject",
      limit: 25,
      found: 33,
      window: { from: 145, to: 245, sum: 33 },
    });
    expect(findingText(together[0])).toBe(
      "1.17 Root concavity: summed length at most 25 mm in any 100 mm (25 % of a weld shorter than 100 mm): 33.0 mm between 145.0 mm and 245.0 mm: reject",
    );
    // by themselves all three are short
    for (const indication of indications) expect(assess(indication, pieceOf(), LEVEL_C).outcome).toBe("accept");
  });

  // two of 14 mm side by side: 26 mm of them in the 100 mm that only touch the third, and over 25 mm in some that hold a part of it
  test.each([
    ["before", hollow(0, 2), hollow(89, 103), hollow(89, 103)],
    ["behind", hollow(200, 202), hollow(99, 113), hollow(99, 113)],
  ])("a piece of an indication %s the others lies in a broken stretch", (_, ...indications) => {
    const { sentences } = assessPiece(indications, pieceOf(), LEVEL_C);
    expect(sentences.map(({ outcome }) => outcome)).toEqual(["reject", "reject", "reject"]);
  });

  test("too long by itself", () => {
    const { outcome, findings } = assess(hollow(0, 40), pieceOf(), LEVEL_C);
    expect(outcome).toBe("reject");
    expect(findings.map((finding) => finding.outcome)).toEqual(["reject", "accept"]);
    expect(findings[0].window).toEqual({ from: 0, to: 100, sum: 40 });
  });

  test("rows are summed up apart: concavity and shrinkage groove of 20 mm each", () => {
    const groove = seen("shrinkage-groove", 60, 80, { depth: 0.3 });
    expect(assessPiece([hollow(0, 20), groove], pieceOf(), LEVEL_C).outcome).toBe("accept");
  });
});

describe("what cannot be judged", () => {
  test.each([
    ["depends on the application", seen("spatter", 10, 40), LEVEL_B, "application", "corrosion protection"],
    ["depends on a condition", seen("stray-arc", 10, 20), LEVEL_D, "condition", "parent metal"],
    [
      "nothing was measured",
      seen("continuous-undercut", 10, 20),
      LEVEL_B,
      "missing-measure",
      "the depth of the continuous undercut is not measured",
    ],
    ["the mouth is no depth", at("crater-pipe", 10, { diameter: 1 }), LEVEL_C, "missing-measure", "the depth"],
    [
      "groups of pores have more limits",
      seen("linear-porosity", 0, 20, { diameter: 1 }),
      LEVEL_C,
      "condition",
      "rows 2.4 and 2.5",
    ],
  ] as const)("%s", (_, indication, criteria, reason, why) => {
    const { outcome, findings, text } = assess(indication, pieceOf(), criteria);
    expect(outcome).toBe("cannot-be-judged");
    expect(findings[0].reason).toBe(reason);
    expect(text).toContain(why);
  });

  test("what is said of it is said once", () => {
    expect(assess(seen("spatter", 10, 40), pieceOf(), LEVEL_B).text).toBe(
      "1.23 Spatter: acceptance depends on the application, such as material or corrosion protection: cannot be judged",
    );
  });

  test("a limit of no size at all needs no measure", () => {
    expect(assess(at("crater-pipe", 10), pieceOf(), LEVEL_B).outcome).toBe("reject");
    expect(assess(seen("longitudinal-crack", 10, 12), pieceOf(), LEVEL_D).text).toBe(
      "1.1 Crack: not permitted: reject",
    );
  });

  test("without the thickness only what holds for any is judged", () => {
    const piece = { length: 300, values: {} };
    const { outcome, text } = assess(seen("continuous-undercut", 0, 9, { depth: 0.1 }), piece, LEVEL_C);
    expect(outcome).toBe("cannot-be-judged");
    expect(text).toContain("t, the thickness of the thinner plate or of the wall, is not given");
  });
});

describe("the piece as a whole", () => {
  const sound = seen("excess-weld-metal", 0, 20, { height: 1 });
  const open = seen("spatter", 40, 60);
  const silent = seen("irregular-width", 100, 140);
  const crack = seen("longitudinal-crack", 200, 210);

  test.each([
    [[], "accept"],
    [[sound], "accept"],
    [[sound, silent], "not-covered"],
    [[sound, silent, open], "cannot-be-judged"],
    [[sound, silent, open, crack], "reject"],
  ] as const)("%#: the worst decides", (indications, outcome) => {
    expect(assessPiece(indications, pieceOf(), LEVEL_B).outcome).toBe(outcome);
  });

  test("what a set says nothing of is said in words", () => {
    expect(assess(silent, pieceOf(), LEVEL_B).text).toBe(
      "ISO 5817, quality level B gives no limit for 513 irregular width on the cap face: no limit given",
    );
  });
});

// ISO 5817:2014 row 4.1, from memory: t over 3 mm: sum of h at most 0.4, 0.3, 0.2 t, fillets 0.25, 0.2, 0.15 a; thinner: none
describe("several imperfections in one cross section", () => {
  const several = (level: "B" | "C" | "D", edition: 2014 | 2023 = 2014) => iso5817({ level, edition, several: true });
  const pair = (depth: number, other: number) => [
    seen("continuous-undercut", 10, 30, { depth }),
    seen("root-concavity", 30, 50, { depth: other }),
  ];

  test("t 12, level B: 2.4 mm; each of them within its own limit of 0.5 mm stays far below", () => {
    expect(assessPiece(pair(0.5, 0.5), pieceOf({ t: 12 }), several("B")).outcome).toBe("accept");
    const { together } = assessPiece(pair(2, 0.5), pieceOf({ t: 12 }), several("B"));
    expect(together.at(-1)).toMatchObject({
      row: "4.1-butt",
      outcome: "reject",
      found: 2.5,
      window: { from: 30, to: 30 },
    });
    expect(together.at(-1)?.limit).toBeCloseTo(2.4, 9);
  });

  test("apart along the weld they do not add up", () => {
    const apart = [seen("continuous-undercut", 10, 30, { depth: 2 }), seen("root-concavity", 31, 50, { depth: 2 })];
    expect(assessPiece(apart, pieceOf({ t: 12 }), several("B")).together.map(({ row }) => row)).not.toContain(
      "4.1-butt",
    );
  });

  test("up to 3 mm two in one section are not permitted; without the switch they are", () => {
    expect(assessPiece(pair(0.1, 0.1), pieceOf({ t: 3 }), several("D")).outcome).toBe("reject");
    expect(assessPiece(pair(0.1, 0.1), pieceOf({ t: 3 }), LEVEL_D).outcome).toBe("accept");
  });

  test("the numbers of 2023 are not known, and that is said", () => {
    const { outcome, together } = assessPiece(pair(0.1, 0.1), pieceOf({ t: 12 }), several("B", 2023));
    expect(outcome).toBe("cannot-be-judged");
    expect(together.at(-1)).toMatchObject({ reason: "not-known" });
  });
});

describe("every set", () => {
  test("has an id of its own and is found by it", () => {
    expect(new Set(BUILT_IN_CRITERIA.map(({ id }) => id)).size).toBe(BUILT_IN_CRITERIA.length);
    for (const criteria of BUILT_IN_CRITERIA) expect(builtInCriteria(criteria.id)).toBe(criteria);
    expect(builtInCriteria("iso-5817-2014-b")?.name).toBe("ISO 5817, quality level B");
    expect(builtInCriteria("none")).toBeUndefined();
  });

  test.each(BUILT_IN_CRITERIA.map((criteria) => [criteria.id, criteria] as const))(
    "%s is read by the schema",
    (_, criteria) => {
      expect(criteriaSchema.parse(JSON.parse(JSON.stringify(criteria)))).toEqual(criteria);
      expect(new Set(criteria.rows.map(({ id }) => id)).size).toBe(criteria.rows.length);
    },
  );

  test.each(BUILT_IN_CRITERIA.map((criteria) => [criteria.id, criteria] as const))(
    "%s gives an outcome and its reason for every type on every face, measured or not",
    (_, criteria) => {
      for (const type of IMPERFECTION_TYPES)
        for (const face of imperfection(type).faces)
          for (const measured of [{}, measuredSize(type, 0.3), { ...measuredSize(type, 30), "toe-angle": 60 }])
            for (const t of [2, 10, 60]) {
              const sentence = assess(seen(type, 100, 140, measured, face), pieceOf({ t }), criteria);
              expect(OUTCOMES).toContain(sentence.outcome);
              expect(sentence.text).not.toMatch(/undefined|null|NaN/);
              const [deciding] = sentence.findings;
              if (deciding.outcome === "cannot-be-judged") expect(deciding.reason, sentence.text).not.toBeNull();
              if (deciding.outcome === "cannot-be-judged" || deciding.outcome === "not-covered")
                expect(deciding.why, sentence.text).toBeTruthy();
              if (deciding.outcome === "accept" || deciding.outcome === "reject")
                expect(deciding.clause, sentence.text).toBeTruthy();
            }
    },
  );

  test("no type is accepted by a set that has no row for it", () => {
    for (const criteria of BUILT_IN_CRITERIA)
      for (const type of IMPERFECTION_TYPES)
        for (const face of imperfection(type).faces) {
          const isNamed = criteria.rows.some(({ types, faces }) => types.includes(type) && faces.includes(face));
          const { outcome } = assess(seen(type, 100, 110, {}, face), pieceOf(), criteria);
          if (!isNamed) expect(outcome, `${criteria.id} ${type}`).toBe("not-covered");
        }
  });
});

test("a size of the report is measured under the name that the catalogue gives it", () => {
  expect(measuredSize("incorrect-root-gap", 1.5)).toEqual({ gap: 1.5 });
  expect(measuredSize("overlap", 1.5)).toEqual({});
  expect(measuredSize("surface-pore", null)).toEqual({});
  for (const type of IMPERFECTION_TYPES) {
    const { size } = imperfection(type);
    if (size !== null) expect(QUANTITY_FACTS).toHaveProperty(size);
  }
});

test("the caution names the reader's own copy of the standard and the contract", () => {
  expect(CAUTION).toMatch(/training/);
  expect(CAUTION).toMatch(/your own copy of the standard/);
  expect(CAUTION).toMatch(/contract/);
});
