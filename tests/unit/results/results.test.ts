import { describe, expect, it } from "vitest";
import {
  DEFAULT_TOLERANCES,
  indicationsResultSchema,
  isPass,
  PART_SHARES,
  RULE_CHAPTERS,
  shownMark,
  storedResultSchema,
  tolerancesSchema,
  WORTH_REPORTING,
} from "../../../lib/results";
import { call, truthItem } from "../../support/marking-cases";
import { markCap, marksOf } from "../../support/marking-simulation";

describe("pass or fail", () => {
  it.each([
    { mark: 69_949, shown: 69.9, passed: false },
    { mark: 69_950, shown: 70, passed: true },
    { mark: 70_049, shown: 70, passed: true },
    { mark: 100_000, shown: 100, passed: true },
    { mark: 0, shown: 0, passed: false },
  ])("of $mark thousandths is decided on $shown", ({ mark, shown, passed }) => {
    expect(shownMark(mark)).toBe(shown);
    expect(isPass(shownMark(mark), 70)).toBe(passed);
  });

  it("compares tenths, not binary fractions", () => {
    expect(isPass(shownMark(70_300), 70.3)).toBe(true);
    expect(isPass(shownMark(70_249), 70.3)).toBe(false);
  });
});

describe("stored results", () => {
  const result = markCap(
    [truthItem({ id: "a", type: "overlap", start: 10, end: 30 })],
    [call({ id: "1", start: 10, across: 0 })],
  );

  it("are read back as they were written", () => {
    expect(indicationsResultSchema.parse(JSON.parse(JSON.stringify(result)))).toEqual(result);
  });

  it("of before clutter was named are read with lines that name none", () => {
    const old = { ...result, lines: result.lines.map(({ clutter: _, ...line }) => line) };
    expect(indicationsResultSchema.parse(JSON.parse(JSON.stringify(old)))).toEqual(result);
  });

  it("are refused where the lines do not add up to the mark, or a line not to its sum", () => {
    expect(indicationsResultSchema.safeParse({ ...result, earned: result.earned + 1 }).success).toBe(false);
    const [line] = result.lines;
    const bent = { ...line, earned: line.earned + 1 };
    expect(indicationsResultSchema.safeParse({ ...result, earned: result.earned + 1, lines: [bent] }).success).toBe(
      false,
    );
  });
});

describe("results of before thickness was measured", () => {
  it("keep their five dimensions and their mark", () => {
    const line = (dimension: string) => ({
      dimension,
      station: null,
      written: 2,
      writtenAt: 40,
      actual: 2.04,
      actualAt: 41,
      actualThere: 2.04,
      error: 0.04,
      tolerance: 0.5,
      nothingFrom: 1,
      worth: 2_857,
      earned: 2_857,
    });
    const names = ["weld-width", "cap-height", "root-height", "linear-misalignment", "angular-misalignment"];
    const { earned, totals, lines } = markCap([truthItem({ id: "a", type: "overlap", start: 10, end: 30 })], []);
    const old = {
      version: 2,
      ruleVersion: "2.0",
      section: "plate",
      passMark: 70,
      mark: earned + 5 * 2_857,
      shown: 14.3,
      passed: false,
      indications: { part: "indications", worth: 85_714, earned, totals, lines },
      dimensions: {
        part: "dimensions",
        worth: 14_286,
        earned: 5 * 2_857,
        lines: names.map(line),
        statements: [],
      },
    };
    expect(storedResultSchema.parse(JSON.parse(JSON.stringify(old)))).toEqual({
      ...old,
      version: 3,
      sentences: null,
      questions: null,
    });
  });
});

describe("results of before both faces of a plate were marked together", () => {
  const { totals, lines, earned } = markCap(
    [truthItem({ id: "a", type: "overlap", start: 10, end: 30 })],
    [call({ id: "1", type: "overlap", start: 10, end: 30, across: 0 })],
  );
  const old = {
    version: 1,
    ruleVersion: "1.0",
    section: "cap",
    passMark: 70,
    mark: earned,
    shown: 100,
    passed: true,
    totals,
    lines,
  };

  it("keep their mark, their face and every line", () => {
    expect(storedResultSchema.parse(JSON.parse(JSON.stringify(old)))).toEqual({
      version: 3,
      ruleVersion: "1.0",
      section: "cap",
      passMark: 70,
      mark: earned,
      shown: 100,
      passed: true,
      indications: { part: "indications", worth: 100_000, earned, totals, lines },
      dimensions: null,
      sentences: null,
      questions: null,
    });
  });

  it("are refused where their lines do not add up", () => {
    expect(storedResultSchema.safeParse({ ...old, mark: earned - 1 }).success).toBe(false);
  });
});

const RULE_TEXT = RULE_CHAPTERS.flatMap(({ paragraphs }) => paragraphs).join(" ");

describe("the published rule", () => {
  it("shares 100 % out among the parts, and its default tolerances are valid data", () => {
    expect(Object.values(PART_SHARES).reduce((a, b) => a + b, 0)).toBe(100);
    expect(tolerancesSchema.parse(JSON.parse(JSON.stringify(DEFAULT_TOLERANCES)))).toEqual(DEFAULT_TOLERANCES);
  });

  it("says 36 %, and at 36 % reporting a doubtful feature of quality 0.9 neither gains nor loses", () => {
    expect(RULE_TEXT).toContain("at least about 36 % likely");
    // Four spatter patches are certain; the fifth feature is real with the probability in question.
    const certain = [10, 60, 110, 160].map((start) =>
      truthItem({ id: `t${start}`, type: "spatter", start, end: start + 20 }),
    );
    const calls = certain.map(({ id, start, end }) => call({ id, type: "spatter", start, end, across: 0 }));
    const doubtful = truthItem({ id: "d", type: "spatter", start: 220, end: 240 });
    // End 14.1 mm short: (15 - 14.1) / 10 = 0.09 of its 10 parts: quality (80 + 0.9) / 90 = 0.899.
    const report = call({ id: "d", type: "spatter", start: 220, end: 225.9, across: 0 });
    const gain = marksOf([...certain, doubtful], [...calls, report]) - marksOf([...certain, doubtful], calls);
    const loss = marksOf(certain, calls) - marksOf(certain, [...calls, report]);
    // In indications: a fifth one is worth 20 marks, a call costs half of 25 where there are four.
    const [gained, lost] = [gain / 20, loss / 25];
    expect(lost / (lost + gained)).toBeCloseTo(WORTH_REPORTING, 2);
  });

  it("names the numbers of the default tolerances", () => {
    for (const number of ["40 %", "25 %", "8 mm", "3 mm", "20 mm", "5 mm", "0.5 mm", "15 %", "50 %", "85 %"]) {
      expect(RULE_TEXT).toContain(number);
    }
  });
});
