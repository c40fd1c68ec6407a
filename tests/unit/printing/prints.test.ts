import { describe, expect, it } from "vitest";
import { type ClassResult, classPrint, piecePages, reportPrint, sittingPrint } from "@/lib/printing";
import { stripsOf } from "@/lib/printing/strips";
import { JOINT_KINDS, PIECES } from "@/lib/weld";
import { REPORT, SHEET } from "./sheet";

describe("strips of a piece", () => {
  it.each([
    [300, 165, 10],
    [200, 200, 10],
    [200, 120, 10],
    [950, 170, 12],
  ])("of %d mm fit on a page of %d mm, and neighbours share %d mm", (length, most, overlap) => {
    const strips = stripsOf(length, most, overlap);
    expect(strips[0].from).toBe(0);
    expect(strips.at(-1)!.to).toBeCloseTo(length, 9);
    for (const { from, to } of strips) expect(to - from).toBeLessThanOrEqual(most + 1e-9);
    for (const [n, { from }] of strips.slice(1).entries()) expect(strips[n].to - from).toBeCloseTo(overlap, 9);
    // one fewer would not do
    expect((length - overlap) / (strips.length - 1 || 1e-9)).toBeGreaterThan(most - overlap);
  });

  it("cover every face of a piece from end to end", () => {
    for (const kind of JOINT_KINDS) {
      const strips = piecePages(kind).flat();
      for (const face of PIECES[kind].faces) {
        const own = strips.filter(({ aspect }) => aspect === face);
        expect([own[0].from, own.at(-1)!.to]).toEqual([0, PIECES[kind].length]);
      }
    }
  });
});

describe("a report on paper", () => {
  const blocks = reportPrint({
    learner: SHEET.learner,
    practiceId: "piece-1",
    kind: "butt",
    joint: SHEET.joint,
    criteria: { name: "ISO 5817, level C", edition: "2014", isOpen: false },
    startedAt: SHEET.startedAt,
    handedInAt: SHEET.handedInAt,
    report: REPORT,
    questions: [{ stem: "How wide?", options: ["1", "2", "3", "4"], written: null }],
  });
  const rowsOf = (title: string) => {
    const block = blocks.find((one) => one.kind === "table" && one.title === title);
    if (block?.kind !== "table") throw new Error(`no ${title}`);
    return block.rows;
  };

  it("has every indication as it was written, blanks included", () => {
    expect(rowsOf("Indications")).toEqual([
      ["1", "Cap", "Continuous undercut (5011)", "27.3", "60", "6.2 B", "1.4 depth", "Reject"],
      ["2", "Cap", "Surface pore (2017)", "100", "point", "3 A", "1.26 diameter", "Accept"],
      ["3", "Cap", "Excess weld metal (502)", "150", "172", "0", "4 height", "Accept"],
      ["4", "Cap", "Excess weld metal (502)", "174", "205", "1 A", "3.5 height", "not written"],
      ["5", "Cap", "Overlap (506)", "280", "290", "7 B", "", "not written"],
      ["6", "Cap", "Overlap (506)", "280", "290", "not written", "", "not written"],
    ]);
  });

  it("has every dimension that was asked for, written or not, and every question", () => {
    expect(rowsOf("Dimensions")).toContainEqual(["Excess weld metal", "3.3", "mm", "104"]);
    expect(rowsOf("Dimensions")).toContainEqual(["Linear misalignment", "not written", "mm", "not written"]);
    expect(rowsOf("Dimensions")).toHaveLength(6);
    expect(rowsOf("Questions")).toEqual([["1", "How wide?", "not answered"]]);
  });

  it("says who, when, by which criteria, and what was decided on the piece, and ends with lines to sign", () => {
    const [facts] = blocks;
    if (facts.kind !== "facts") throw new Error("no facts");
    expect(Object.fromEntries(facts.facts)).toMatchObject({
      Learner: 'Ása Łuk, called "Ö" (asa)',
      "Handed in": SHEET.handedInAt,
      Criteria: "ISO 5817, level C (2014), table closed",
      "Sentence on the piece": "Accept",
    });
    expect(blocks.at(-1)).toEqual({ kind: "signatures", of: ["Learner", "Tutor"] });
  });
});

describe("a result list on paper", () => {
  const result = (
    learnerId: string,
    day: number,
    markThousandths: number,
    section: ClassResult["section"] = "plate",
    work: ClassResult["work"] = { kind: "practice" },
  ) => ({
    learnerId,
    section,
    markThousandths,
    passMark: 70,
    isPassed: markThousandths >= 69_950,
    handedInAt: new Date(Date.UTC(2026, 2, day)),
    work,
  });
  const learners = [
    { id: "a", name: "Ana", signInName: "ana" },
    { id: "b", name: "Bo", signInName: "bo" },
  ];
  const printed = { name: "Evening", tutors: ["Maren"], learners, at: new Date(Date.UTC(2026, 3, 1)) };
  const tablesOf = (results: readonly ClassResult[]) =>
    classPrint({ ...printed, results }).flatMap((block) => (block.kind === "table" ? [block] : []));

  it("has a row for each learner: pieces, passed ones, and the mark that came last whatever the order", () => {
    const [people, pieces] = tablesOf([
      result("a", 9, 69_950),
      result("a", 3, 91_249),
      result("a", 5, 40_000),
      result("a", 4, 80_000, "fillet"),
    ]);
    expect(people.rows).toEqual([
      ["Ana", "ana", "2 of 3 passed, last\u00a070.0", "none", "1 of 1 passed, last\u00a080.0", "none"],
      ["Bo", "bo", "none", "none", "none", "none"],
    ]);
    expect(pieces.rows.map((row) => [row[0], row[4], row[6]])).toEqual([
      ["Ana", "91.2", "passed"],
      ["Ana", "80.0", "passed"],
      ["Ana", "40.0", "not passed"],
      ["Ana", "70.0", "passed"],
    ]);
  });

  it("has columns for faces by themselves only where there are such marks", () => {
    expect(tablesOf([])[0].columns).toHaveLength(6);
    expect(
      tablesOf([result("b", 1, 50_000, "root")])[0]
        .columns.slice(-2)
        .map(({ name }) => name),
    ).toEqual(["Root face, practice", "Root face, sittings"]);
  });

  it("tells practice from what was sat, says paper, round and attempt, and counts nothing that is void", () => {
    const sat = { kind: "sitting", paper: "Spring paper", attempt: "first", round: 1, isVoid: false } as const;
    const [people, pieces] = tablesOf([
      result("a", 3, 90_000),
      result("a", 4, 40_000, "plate", sat),
      result("a", 5, 99_000, "plate", { ...sat, attempt: "void", isVoid: true }),
      result("a", 6, 75_000, "plate", { ...sat, attempt: "re-sit", round: 2 }),
      result("a", 7, 71_000, "plate", { ...sat, attempt: null, round: null }),
    ]);
    expect(people.rows[0].slice(2, 4)).toEqual(["1 of 1 passed, last\u00a090.0", "2 of 3 passed, last\u00a071.0"]);
    expect(pieces.rows.map((row) => [row[3], row[4], row[6]])).toEqual([
      ["practice", "90.0", "passed"],
      ["Spring paper, round 1, first time", "40.0", "not passed"],
      ["Spring paper, void, does not count", "99.0", "void"],
      ["Spring paper, round 2, re-sit", "75.0", "passed"],
      ["Spring paper", "71.0", "passed"],
    ]);
  });
});

describe("the results of a sitting on paper", () => {
  const at = new Date("2026-03-02T12:00:00.000Z");
  const blocks = sittingPrint({
    paperName: "Spring paper",
    className: "Monday class",
    plannedAt: at,
    closedAt: at,
    releasedAt: null,
    voidReason: null,
    rows: [
      {
        learner: "Kim",
        section: "Butt plate",
        mark: { shown: 71, isPassed: true, passMark: 70, computed: { shown: 68.4, isPassed: false } },
        isVoid: false,
        note: "",
      },
      {
        learner: "Ola",
        section: "Butt plate",
        mark: { shown: 90, isPassed: true, passMark: 70, computed: null },
        isVoid: false,
        note: "",
      },
      { learner: "Pia", section: "Butt plate", mark: null, isVoid: false, note: "not sat" },
      {
        learner: "Rio",
        section: "Butt plate",
        mark: { shown: 80, isPassed: true, passMark: 70, computed: null },
        isVoid: true,
        note: "a fire alarm",
      },
    ],
    standings: [],
    log: [{ at, by: "T. Utor", what: "overruled a line", reason: "seen by lens" }],
    at,
  });
  const table = (title: string) => blocks.find((block) => block.kind === "table" && block.title === title);

  it("have the computed and the reviewed mark side by side, and the verdict of the one that counts", () => {
    expect(table("Results")).toMatchObject({
      rows: [
        ["Kim", "Butt plate", "68.4", "71.0", "70", "passed", ""],
        ["Ola", "Butt plate", "90.0", "", "70", "passed", ""],
        ["Pia", "Butt plate", "", "", "", "", "not sat"],
        ["Rio", "Butt plate", "80.0", "", "70", "void, does not count", "a fire alarm"],
      ],
    });
  });

  it("say who did what, when and why", () => {
    expect(table("What was done")).toMatchObject({ rows: [[at, "T. Utor", "overruled a line", "seen by lens"]] });
  });
});
