import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import { DimensionTable } from "@/app/_marks/dimension-table";
import { statementStory } from "@/app/_marks/statement-words";
import type { DimensionLine, StatementLine } from "@/lib/results";

const throat: DimensionLine = {
  dimension: "throat",
  station: 2,
  written: 4.4,
  writtenAt: null,
  actual: 4.93,
  actualAt: 103,
  actualThere: null,
  error: 0.53,
  tolerance: 0.5,
  nothingFrom: 1,
  worth: 5_102,
  earned: 4_796,
};
const profile: StatementLine = {
  statement: "profile",
  written: "concave",
  right: ["mitre", "convex"],
  value: 0.38,
  limit: 0.3,
  worth: 5_102,
  earned: 0,
};

const wordsOf = (lines: readonly DimensionLine[], statements: readonly StatementLine[]) =>
  renderToStaticMarkup(<DimensionTable lines={lines} statements={statements} />)
    .replace(/<[^>]+>/g, " ")
    .replace(/\s+/g, " ");

describe("the dimensions of a fillet on its mark sheet", () => {
  test("name their station, and every station has a line of its own", () => {
    const words = wordsOf([{ ...throat, station: 1 }, throat], []);
    expect(words).toContain("Throat, station 1");
    expect(words).toContain("Throat, station 2 4.4 mm 4.9 mm at 103 mm 0.5 mm full to 0.5 mm 4.80 of 5.10");
  });

  test("have what was stated beside what is right, and nothing where nothing was stated", () => {
    expect(wordsOf([], [profile])).toContain("Profile of the face concave mitre or convex");
    expect(wordsOf([], [profile])).toContain("0.00 of 5.10");
    expect(wordsOf([], [{ ...profile, written: null }])).toContain("Profile of the face nothing mitre or convex");
  });
});

describe("why a statement is right", () => {
  test.each([
    [
      profile,
      /^Along most of the weld the face stands out 0\.4 mm: within 0\.2 mm of the limit of 0\.3 mm.*both are right\.$/,
    ],
    [
      { ...profile, value: -0.72, limit: -0.3, right: ["concave"] },
      /^Along most of the weld the face falls back 0\.7 mm; the limit is 0\.3 mm\.$/,
    ],
    [
      { ...profile, statement: "asymmetry", value: 2.6, limit: 2, right: ["unequal"] },
      /^The legs differ by up to 2\.6 mm; the limit is 2 mm\.$/,
    ],
    [
      { ...profile, statement: "size", value: 4.43, limit: 4, right: ["met"] },
      /^The smallest is 4\.4 mm; the limit is 4 mm\.$/,
    ],
  ] as const)("case %#", (line, words) => expect(statementStory(line)).toMatch(words));
});
