import { describe, expect, it } from "vitest";
import { imperfection } from "@/lib/imperfections";
import { statementTruths } from "@/lib/specimen/fillet/statements";
import { type FilletSizes, STATEMENT_FACTS, type Statement } from "@/lib/weld";

const SOUND: FilletSizes = {
  baseLeg: 7,
  standingLeg: 7,
  actualThroat: 5,
  designThroat: 4.9,
  gaugeThroat: 5,
  convexity: 0,
  concavity: 0,
  asymmetry: 0,
};

/** A weld every mm from 11 to 190 mm, with other sizes from one place to another. */
function weld(change: Partial<FilletSizes> = {}, from = 0, to = 200) {
  return Array.from({ length: 180 }, (_, n) => {
    const x = 11 + n;
    return { x, sizes: x >= from && x <= to ? { ...SOUND, ...change } : SOUND };
  });
}

const right = (along: ReturnType<typeof weld>, statement: Statement, symbol: "a" | "z" = "a", value = 4) =>
  statementTruths(along, { symbol, value }).find((one) => one.statement === statement)!.right;

describe("what is right to state", () => {
  it.each([
    // limits at 0.5 mm to either side; within 0.2 mm of one both its answers are right
    [{ convexity: 0.71 }, ["convex"]],
    [{ convexity: 0.7 }, ["mitre", "convex"]],
    [{ convexity: 0.3 }, ["mitre", "convex"]],
    [{ convexity: 0.29 }, ["mitre"]],
    [{}, ["mitre"]],
    [{ concavity: 0.29 }, ["mitre"]],
    [{ concavity: 0.3 }, ["concave", "mitre"]],
    [{ concavity: 0.71 }, ["concave"]],
    // stands out in one place of a section and falls back in another: what is left
    [{ convexity: 0.9, concavity: 0.85 }, ["mitre"]],
  ])("of a profile of %j: %j", (change, answers) => expect(right(weld(change), "profile")).toEqual(answers));

  it("of a profile goes by most of the weld, not by one bulge", () => {
    expect(right(weld({ convexity: 2 }, 20, 90), "profile")).toEqual(["mitre"]);
    expect(right(weld({ convexity: 2 }, 20, 150), "profile")).toEqual(["convex"]);
  });

  it.each([
    [2.21, 60, 90, ["unequal"]],
    [2.2, 60, 90, ["equal", "unequal"]],
    [1.8, 60, 90, ["equal", "unequal"]],
    [1.79, 60, 90, ["equal"]],
    // over 8 mm, and over less
    [3, 60, 68, ["unequal"]],
    [3, 60, 67, ["equal"]],
  ])("of legs that differ by %d mm from %d to %d mm: %j", (asymmetry, from, to, answers) => {
    expect(right(weld({ asymmetry }, from, to), "asymmetry")).toEqual(answers);
  });

  it.each([
    ["a", 4.79, ["met"]],
    ["a", 4.8, ["not-met", "met"]],
    ["a", 5.2, ["not-met", "met"]],
    ["a", 5.21, ["not-met"]],
    ["z", 6.79, ["met"]],
    ["z", 7.21, ["not-met"]],
  ] as const)("of size %s%d over throats of 5 and legs of 7 mm: %j", (symbol, value, answers) => {
    expect(right(weld(), "size", symbol, value)).toEqual(answers);
  });

  it("of the size goes by the smallest place as wide as a gauge, and by the shorter leg", () => {
    expect(right(weld({ gaugeThroat: 3 }, 80, 90), "size")).toEqual(["not-met"]);
    // a pit 2 mm long is bridged by a blade of 3 mm
    expect(right(weld({ gaugeThroat: 3 }, 80, 81), "size")).toEqual(["met"]);
    expect(right(weld({ standingLeg: 5 }, 80, 90), "size", "z", 6)).toEqual(["not-met"]);
    expect(right(weld({ standingLeg: 5 }, 80, 90), "size", "a", 4)).toEqual(["met"]);
  });
});

it("the words of the question name what the catalogue records", () => {
  const { recordedFrom, recordedLength } = imperfection("excessive-asymmetry");
  expect(STATEMENT_FACTS.asymmetry.asks).toContain(`${recordedFrom} mm or more over ${recordedLength} mm`);
});
