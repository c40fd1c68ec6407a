import { describe, expect, test } from "vitest";
import { api1104, asmeB313, assess, assessPiece, awsD11, en1090, type Indication, type Outcome } from "@/lib/criteria";
import { at, pieceOf, seen } from "./pieces";

const STATIC = awsD11({ loading: "static", stress: "other" });
const STATIC_ACROSS = awsD11({ loading: "static", stress: "across-tension" });
const CYCLIC = awsD11({ loading: "cyclic", stress: "other" });
const CYCLIC_ACROSS = awsD11({ loading: "cyclic", stress: "across-tension" });
const undercut = (start: number, end: number, depth: number) => seen("continuous-undercut", start, end, { depth });
const pore = (place: number, diameter: number) => at("surface-pore", place, { diameter });

// AWS D1.1, table of visual acceptance criteria (6.1, since 2020 8.1), mm
describe("AWS D1.1 undercut", () => {
  test.each<[string, Indication[], number, Outcome]>([
    ["static, t 12: 0.9 over the whole weld", [undercut(0, 300, 0.9)], 12, "accept"],
    ["static, t 12: 1.0 is the limit of any length", [undercut(0, 300, 1)], 12, "accept"],
    ["static, t 12: 1.5 over 50 mm in 300", [undercut(100, 150, 1.5)], 12, "accept"],
    ["static, t 12: 1.5 over 51 mm in 300", [undercut(100, 151, 1.5)], 12, "reject"],
    ["static, t 12: 25 mm on each toe and 1 mm more", [undercut(0, 25, 1.5), undercut(200, 226, 1.2)], 12, "reject"],
    ["static, t 12: shallow length does not count", [undercut(0, 50, 1.5), undercut(60, 300, 1)], 12, "accept"],
    ["static, t 12: 2.01 however short", [undercut(0, 5, 2.01)], 12, "reject"],
    ["static, t 24.9: 51 mm", [undercut(0, 51, 2)], 24.9, "reject"],
    ["static, t 25: 2.0 of any length", [undercut(0, 300, 2)], 25, "accept"],
    ["static, t 25: 2.01", [undercut(0, 10, 2.01)], 25, "reject"],
  ])("%s", (_, indications, t, outcome) => {
    expect(assessPiece(indications, pieceOf({ t }), STATIC).outcome).toBe(outcome);
  });

  test("51 mm spread over more than 300 mm is no 51 mm in any 300", () => {
    const indications = [undercut(0, 30, 1.5), undercut(315, 336, 1.5)];
    const { outcome, together } = assessPiece(indications, pieceOf({ t: 12 }, 400), STATIC);
    // 0 to 300 holds 30, 36 to 336 holds 21, 15 to 315 holds 15, 30 to 330 holds 15
    expect(outcome).toBe("accept");
    expect(together[0].window).toEqual({ from: 0, to: 300, sum: 30 });
  });

  test("cyclic: 0.25 across a tensile stress in a primary member, else 1 mm", () => {
    const outcomes = (depth: number) =>
      [CYCLIC_ACROSS, CYCLIC].map((set) => assess(undercut(0, 9, depth), pieceOf(), set).outcome);
    expect(outcomes(0.25)).toEqual(["accept", "accept"]);
    expect(outcomes(0.26)).toEqual(["reject", "accept"]);
    expect(outcomes(1.01)).toEqual(["reject", "reject"]);
  });
});

describe("AWS D1.1 porosity", () => {
  // static: pores of 1 mm and more, 10 mm in any 25 mm and 20 mm in any 300 mm
  test.each<[string, Indication[], Outcome]>([
    ["10 mm in 25", [pore(100, 4), pore(110, 3), pore(124, 3)], "accept"],
    ["10.1 mm in 25", [pore(100, 4), pore(110, 3), pore(124, 3.1)], "reject"],
    ["the same over 26 mm", [pore(100, 4), pore(110, 3), pore(126, 3.1)], "accept"],
    ["pores under 1 mm do not count", [pore(100, 10), ...[101, 102, 103].map((place) => pore(place, 0.99))], "accept"],
    ["20 mm in 300", [0, 60, 120, 180, 240].map((place) => pore(place, 4)), "accept"],
    ["21 mm in 300", [...[0, 60, 120, 180, 240].map((place) => pore(place, 4)), pore(280, 1)], "reject"],
    [
      "a cluster whose pores add up to 11 mm over 20 mm",
      [seen("clustered-porosity", 50, 70, { diameter: 2, "diameter-sum": 11 })],
      "reject",
    ],
    [
      "a cluster whose pores nobody added up",
      [seen("clustered-porosity", 50, 70, { diameter: 2 })],
      "cannot-be-judged",
    ],
    ["a pore that nobody measured", [at("surface-pore", 50)], "cannot-be-judged"],
    ["a cluster of pores under 1 mm", [seen("clustered-porosity", 50, 70, { diameter: 0.9 })], "accept"],
  ])("static: %s", (_, indications, outcome) => {
    expect(assessPiece(indications, pieceOf(), STATIC).outcome).toBe(outcome);
  });

  test("a pore that is accepted shows the sum it was held against", () => {
    expect(assess(pore(50, 3), pieceOf(), STATIC).text).toBe(
      "porosity Piping porosity in a groove weld: summed diameters at most 10 mm in any 25 mm, counting those with a diameter of 1 mm and more: 3.0 mm between 25.0 mm and 50.0 mm: accept",
    );
  });

  test("a butt weld across a tensile stress has none, a fillet goes by the sums", () => {
    expect(assess(pore(50, 0.5), pieceOf(), STATIC_ACROSS).outcome).toBe("reject");
    const onFillet = seen("surface-pore", 50, 50, { diameter: 5 }, "fillet");
    expect(assess(onFillet, pieceOf(), STATIC_ACROSS).outcome).toBe("accept");
  });

  // cyclic: one pore per 100 mm, 2.5 mm at most
  test.each<[string, Indication[], Outcome]>([
    ["one of 2.5 mm", [pore(50, 2.5)], "accept"],
    ["one of 2.6 mm", [pore(50, 2.6)], "reject"],
    ["two 99 mm apart", [pore(50, 1), pore(149, 1)], "reject"],
    ["one in each 100 mm", [pore(50, 1), pore(150, 1), pore(250, 1)], "accept"],
    ["a group is more than one", [seen("linear-porosity", 20, 60, { diameter: 0.5 })], "reject"],
  ])("cyclic: %s", (_, indications, outcome) => {
    expect(assessPiece(indications, pieceOf(), CYCLIC).outcome).toBe(outcome);
  });
});

describe("AWS D1.1 fillets and profiles", () => {
  // shortfall of the leg: L 5 -> 2, 6 -> 2.5, 8 -> 3 mm over at most 10 % of the length
  test.each([
    [5, 2],
    [6, 2.5],
    [8, 3],
    [12, 3],
  ])("undersize of a leg of %d mm: %d mm", (z, most) => {
    const sentence = (shortfall: number, end: number) =>
      assess(seen("insufficient-throat", 0, end, { "leg-shortfall": shortfall }), pieceOf({ z }, 200), STATIC).outcome;
    expect([sentence(most, 20), sentence(most + 0.1, 20), sentence(most, 20.1)]).toEqual([
      "accept",
      "reject",
      "reject",
    ]);
  });

  // width of the face up to 8: 2 mm, under 25: 3 mm, from 25 (from memory): 5 mm
  test.each([
    [8, 2],
    [8.1, 3],
    [24.9, 3],
    [25, 5],
  ])("convexity with a face %d mm wide: %d mm", (b, most) => {
    const sentence = (height: number) =>
      assess(seen("excessive-convexity", 0, 20, { height }), pieceOf({ b }), STATIC).outcome;
    expect([sentence(most), sentence(most + 0.1)]).toEqual(["accept", "reject"]);
  });

  // thickness up to 25: 3 mm; up to 50: 5 mm, from 50: 6 mm (both from memory)
  test.each([
    [25, 3],
    [25.1, 5],
    [49.9, 5],
    [50, 6],
  ])("reinforcement on %d mm: %d mm", (t, most) => {
    const sentence = (height: number) =>
      assess(seen("excess-weld-metal", 0, 20, { height }), pieceOf({ t }), STATIC).outcome;
    expect([sentence(most), sentence(most + 0.1)]).toEqual(["accept", "reject"]);
  });

  test("a crater pipe leaves open whether the crater is filled", () => {
    const { outcome, findings } = assess(at("crater-pipe", 50, { diameter: 2 }), pieceOf(), STATIC);
    expect(outcome).toBe("cannot-be-judged");
    expect(findings[0].reason).toBe("condition");
  });
});

// ASME B31.3 table 341.3.2, normal fluid service, visual
describe("ASME B31.3", () => {
  const GIRTH = asmeB313("girth");
  const LONGITUDINAL = asmeB313("longitudinal");

  // Tw up to 6: 1.5; over 6 to 13: 3; over 13 to 25: 4; over 25: 5 mm
  test.each([
    [6, 1.5],
    [6.01, 3],
    [13, 3],
    [13.01, 4],
    [25, 4],
    [25.01, 5],
    [26, 5],
  ])("reinforcement or protrusion with Tw %d: %d mm", (t, most) => {
    for (const type of ["excess-weld-metal", "excess-penetration", "excessive-convexity"] as const) {
      const sentence = (height: number) => assess(seen(type, 0, 20, { height }), pieceOf({ t }), GIRTH).outcome;
      expect([sentence(most), sentence(most + 0.1)], type).toEqual(["accept", "reject"]);
    }
  });

  // criterion H: 1 mm and Tw / 4
  test.each([
    [3, 0.75],
    [4, 1],
    [8, 1],
  ])("undercut of a girth weld with Tw %d: %d mm; none in a longitudinal weld", (t, most) => {
    const sentence = (depth: number, set = GIRTH) => assess(undercut(0, 200, depth), pieceOf({ t }), set).outcome;
    expect([sentence(most), sentence(most + 0.01)]).toEqual(["accept", "reject"]);
    expect(sentence(0.1, LONGITUDINAL)).toBe("reject");
  });

  // criterion B: 1 mm and 0.2 Tw deep, 38 mm in any 150 mm
  test("incomplete penetration: Tw 4 allows 0.8 mm, Tw 12 1 mm, 38 mm in 150 mm", () => {
    const lack = (start: number, end: number, depth: number) => seen("root-penetration", start, end, { depth });
    const outcome = (indications: Indication[], t: number, set = GIRTH) =>
      assessPiece(indications, pieceOf({ t }), set).outcome;
    expect([outcome([lack(0, 38, 0.8)], 4), outcome([lack(0, 38, 0.81)], 4)]).toEqual(["accept", "reject"]);
    expect([outcome([lack(0, 38, 1)], 12), outcome([lack(0, 38, 1.01)], 12)]).toEqual(["accept", "reject"]);
    expect(outcome([lack(0, 38.1, 0.5)], 12)).toBe("reject");
    expect(outcome([lack(0, 19, 0.5), lack(131, 150, 0.5)], 12)).toBe("accept");
    expect(outcome([lack(0, 19, 0.5), lack(130, 150, 0.5)], 12)).toBe("reject");
    expect(outcome([lack(0, 19, 0.5), lack(151, 170, 0.5), lack(251, 270, 0.5)], 12)).toBe("accept");
    expect(outcome([lack(0, 5, 0.1)], 12, LONGITUDINAL)).toBe("reject");
  });

  test("surface porosity and slag are judged on 5 mm and thinner only", () => {
    for (const type of ["surface-pore", "slag-residue"] as const) {
      expect(assess(seen(type, 10, 12), pieceOf({ t: 5 }), GIRTH).outcome).toBe("reject");
      const thick = assess(seen(type, 10, 12), pieceOf({ t: 5.01 }), GIRTH);
      expect(thick.outcome).toBe("not-covered");
      expect(thick.text).toContain("only for t up to 5 mm");
    }
  });

  test("a concave root may be as hollow as the cap is high", () => {
    expect(assess(seen("root-concavity", 0, 20, { depth: 1.5 }), pieceOf({ hCap: 1.4 }), GIRTH).text).toBe(
      "concave root: K Concave root: h ≤ cap height: 1 × 1.4 = 1.4 mm; measured 1.5 mm: reject",
    );
    const sentence = (depth: number) =>
      assess(seen("root-concavity", 0, 20, { depth }), pieceOf({ hCap: 1.4 }), GIRTH).outcome;
    expect([sentence(1.4), sentence(1.5)]).toEqual(["accept", "reject"]);
  });
});

// API 1104 clause 9; which values were seen in secondary sources and which are from memory stands in its rows
describe("API 1104", () => {
  const API = api1104();
  test("the rule on undercut in words", () => {
    expect(assess(undercut(0, 60, 0.5), pieceOf(), API).text).toBe(
      "9.7, undercutting Undercut, cap and root together: summed length at most 50 mm in any 300 mm, counting those with a depth over 0.06 t or 0.4 mm, whichever is less: 60.0 mm between 0.0 mm and 300.0 mm: reject",
    );
  });

  const outcome = (indications: Indication[], t = 10, length = 300) =>
    assessPiece(indications, pieceOf({ t }, length), API).outcome;

  test.each([
    ["0.8 mm and 12.5 %: t 6.4 gives 0.8", [undercut(0, 50, 0.8)], 6.4, 300, "accept"],
    ["over 0.8 mm", [undercut(0, 5, 0.81)], 10, 300, "reject"],
    ["t 4 allows 0.5 mm", [undercut(0, 5, 0.51)], 4, 300, "reject"],
    ["0.4 mm over any length", [undercut(0, 300, 0.4)], 10, 300, "accept"],
    ["6 % of 5 mm is 0.3: 0.35 counts", [undercut(0, 60, 0.35)], 5, 300, "reject"],
    ["50 mm in 300", [undercut(0, 50, 0.5)], 10, 300, "accept"],
    ["51 mm in 300", [undercut(0, 51, 0.5)], 10, 300, "reject"],
    ["a sixth of a weld of 240 mm is 40 mm", [undercut(0, 40, 0.5)], 10, 240, "accept"],
    ["41 mm of 240 mm", [undercut(0, 41, 0.5)], 10, 240, "reject"],
    [
      "cap and root together",
      [undercut(0, 26, 0.5), seen("shrinkage-groove", 0, 25, { depth: 0.5 })],
      10,
      300,
      "reject",
    ],
  ] as const)("undercut: %s", (_, indications, t, length, expected) => {
    expect(outcome([...indications], t, length)).toBe(expected);
  });

  test("incomplete penetration and fusion: 25 mm, 8 % of a weld shorter than 300 mm", () => {
    for (const type of ["root-penetration", "root-fusion"] as const) {
      expect([outcome([seen(type, 0, 25)]), outcome([seen(type, 0, 25.1)])]).toEqual(["accept", "reject"]);
      expect([
        outcome([seen(type, 0, 10), seen(type, 280, 295)]),
        outcome([seen(type, 0, 10), seen(type, 280, 296)]),
      ]).toEqual(["accept", "reject"]);
      // 8 % of 200 mm
      expect([outcome([seen(type, 0, 16)], 10, 200), outcome([seen(type, 0, 16.1)], 10, 200)]).toEqual([
        "accept",
        "reject",
      ]);
    }
  });

  test("a crater crack up to 4 mm depends on how deep it is; a longer one and any other crack is rejected", () => {
    expect(assess(seen("crater-crack", 100, 104), pieceOf(), API)).toMatchObject({
      outcome: "cannot-be-judged",
      findings: [{ reason: "condition" }],
    });
    expect(outcome([seen("crater-crack", 100, 104.1)])).toBe("reject");
    expect(outcome([at("transverse-crack", 100)])).toBe("reject");
  });

  test("burn-through: 6 mm, 13 mm in 300 mm, and never accepted by eye alone", () => {
    expect(outcome([seen("burn-through", 10, 16)])).toBe("cannot-be-judged");
    expect(outcome([seen("burn-through", 10, 16.1)])).toBe("reject");
    expect(outcome([seen("burn-through", 10, 15), seen("burn-through", 60, 65), seen("burn-through", 99, 102.1)])).toBe(
      "reject",
    );
    expect(assess(at("burn-through", 10), pieceOf(), API).findings[0].reason).toBe("missing-measure");
  });

  test("cap height 1.6 mm; a cap below the plate is rejected; a single pore 3 mm or a quarter of the wall", () => {
    const cap = (height: number) => outcome([seen("excess-weld-metal", 0, 20, { height })]);
    expect([cap(1.6), cap(1.7)]).toEqual(["accept", "reject"]);
    expect(outcome([seen("sagging", 0, 20, { depth: 0.1 })])).toBe("reject");
    expect([outcome([pore(50, 2.5)]), outcome([pore(50, 2.6)])]).toEqual(["accept", "reject"]);
    expect([outcome([pore(50, 3)], 20), outcome([pore(50, 3.1)], 20)]).toEqual(["accept", "reject"]);
  });

  test("root concavity is for radiographs", () => {
    const { outcome: judged, findings } = assess(seen("root-concavity", 0, 20, { depth: 0.5 }), pieceOf(), API);
    expect([judged, findings[0].reason]).toEqual(["cannot-be-judged", "other-method"]);
  });
});

// EN 1090-2: class 1 = D; 2 = C, but D for 506, 601, 2025; 3 = B; 4 = B and more; 505 is not considered
describe("EN 1090-2", () => {
  test("class 2 goes by level C, and by D for overlap, stray arc and end crater pipe", () => {
    // t = 10: crater pipe C 1.0, D 2.0; b = 16: overlap C none, D 3.2; undercut C 0.5, D 1.0
    const outcomes = (indication: Indication) =>
      ([1, 2, 3] as const).map((execution) => assess(indication, pieceOf(), en1090(execution)).outcome);
    expect(outcomes(at("crater-pipe", 50, { depth: 1.9 }))).toEqual(["accept", "accept", "reject"]);
    expect(outcomes(seen("overlap", 0, 20, { width: 3.2 }))).toEqual(["accept", "accept", "reject"]);
    expect(outcomes(seen("stray-arc", 0, 9))).toEqual(["cannot-be-judged", "cannot-be-judged", "reject"]);
    expect(outcomes(undercut(0, 20, 0.9))).toEqual(["accept", "reject", "reject"]);
    expect(outcomes(seen("incorrect-weld-toe", 0, 20, { "toe-angle": 80 }))).toEqual(["accept", "accept", "accept"]);
  });

  test("class 4 rejects what level B rejects and leaves the rest open", () => {
    expect(assess(undercut(0, 20, 0.51), pieceOf(), en1090(4)).outcome).toBe("reject");
    expect(assess(undercut(0, 20, 0.5), pieceOf(), en1090(4)).outcome).toBe("cannot-be-judged");
  });
});
