import { describe, expect, it } from "vitest";
import { EMPTY_REPORT, REPORT_SCHEMAS, reportSchema } from "@/lib/report";
import { ASKED_DIMENSIONS, type JointKind } from "@/lib/weld";

const call = {
  id: "a",
  face: "fillet",
  type: "overlap",
  start: 10,
  end: 30,
  across: 6,
  size: null,
  sentence: "reject",
};
const measure = { dimension: "throat", station: 2, value: 4.5, at: null };
const stated = { statement: "profile", answer: "convex" };
const report = {
  version: 1,
  calls: [call],
  measures: [measure],
  statements: [stated],
  pieceSentence: "refer",
  answers: {},
};

/** Where a report is wrong, and what is said of it. */
function problems(kind: JointKind, value: object): string[] {
  const parsed = REPORT_SCHEMAS[kind].safeParse({ ...EMPTY_REPORT, ...value });
  return parsed.success ? [] : parsed.error.issues.map(({ path, message }) => `${path.join(".")}: ${message}`);
}

describe("a report on a fillet", () => {
  it("is kept as written", () => {
    expect(REPORT_SCHEMAS.fillet.parse(report)).toEqual(report);
    expect(reportSchema.parse(report)).toEqual(report);
  });

  it.each([
    [{ ...call, start: 200.1 }, "calls.0.start", /<=200/],
    [{ ...call, end: 201 }, "calls.0.end", /<=200/],
    [{ ...call, across: 48.1 }, "calls.0.across", /<=48/],
    [{ ...call, across: -48.1 }, "calls.0.across", /-48/],
    [{ ...call, face: "cap" }, "calls.0.face", /fillet/],
  ])("case %#: refuses what lies off the piece, and says where", (wrong, path, message) => {
    const [first] = problems("fillet", { calls: [wrong] });
    expect(first).toContain(path);
    expect(first).toMatch(message);
    // a plate of 300 x 150 mm has these places
    if (wrong.face === "fillet") {
      expect(problems("butt", { calls: [{ ...wrong, face: "cap" }] })).toEqual([]);
    }
  });

  it.each([
    [[{ ...measure, station: null }], "measures.0.station: the station, 1 to 3"],
    [[{ ...measure, dimension: "smallest-leg" }], "measures.0.station: no station: null"],
    [[{ ...measure, value: 31 }], "measures.0.value: at most 30 mm"],
    [[measure, { ...measure, value: 5 }], "measures: measures: every dimension stands there once at most"],
  ])("case %#: refuses a measure that is not asked for", (measures, message) => {
    expect(problems("fillet", { measures })[0]).toContain(message);
  });

  it("takes one dimension at each of its stations, and no station that is not scribed", () => {
    const all = ASKED_DIMENSIONS.fillet.map((asked) => ({ ...asked, value: 5, at: 50 }));
    // three stations of two legs and a throat, the smallest leg and the smallest throat
    expect(all).toHaveLength(11);
    expect(problems("fillet", { measures: all })).toEqual([]);
    expect(problems("fillet", { measures: [{ ...measure, station: 4 }] })).toHaveLength(1);
  });

  it("refuses an answer to another question, and two answers to one", () => {
    expect(problems("fillet", { statements: [{ statement: "size", answer: "convex" }] })[0]).toContain(
      "statements.0.answer",
    );
    const both = [stated, { statement: "profile", answer: "mitre" }];
    expect(problems("fillet", { statements: both })[0]).toContain("every statement stands there once at most");
  });
});

describe("a report on a plate", () => {
  it("has no measures and statements of a fillet", () => {
    expect(problems("butt", { measures: [measure] })[0]).toContain("measures.0.dimension");
    expect(problems("butt", { statements: [stated] })[0]).toContain("statements");
    expect(problems("butt", { calls: [call] })[0]).toContain("calls.0.face");
  });

  it("of before stations and statements is read with none", () => {
    const old = { version: 1, calls: [], measures: [{ dimension: "cap-height", value: 2, at: 104 }] };
    expect(reportSchema.parse(old)).toEqual({
      version: 1,
      calls: [],
      measures: [{ dimension: "cap-height", station: null, value: 2, at: 104 }],
      statements: [],
      pieceSentence: null,
      answers: {},
    });
    expect(reportSchema.parse({ version: 1, calls: [] })).toEqual(EMPTY_REPORT);
  });

  it("of before anything was sentenced is read without sentences, and takes no other words", () => {
    const { sentence: _, ...unsentenced } = { ...call, face: "cap" };
    expect(reportSchema.parse({ version: 1, calls: [unsentenced] }).calls[0].sentence).toBeNull();
    expect(problems("butt", { calls: [{ ...unsentenced, sentence: "repair" }] })[0]).toContain("calls.0.sentence");
    expect(problems("butt", { pieceSentence: "passed" })[0]).toContain("pieceSentence");
  });

  it("names the faces there are where none of them is written", () => {
    const wrong = reportSchema.safeParse({ version: 1, calls: [{ ...call, face: "side" }] });
    expect(wrong.error?.issues[0].message).toBe("one of cap, root, fillet");
  });
});
