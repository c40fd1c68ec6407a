import { describe, expect, test } from "vitest";
import { describeNext, durationWords, errorWords, gaugesWords } from "@/app/_drills/drill-words";
import { readAnswer, spell } from "@/app/_drills/read-answer";
import { DRILL_GAUGES, type Drill, type DrillRound } from "@/lib/drills";

function round(drill: Drill, right: number, asked: number, day: number): DrillRound {
  const finishedAt = new Date(Date.UTC(2026, 2, day));
  return {
    id: `${drill}-${day}`,
    drill,
    gauges: ["depth-gauge"],
    asked,
    right,
    medianError: 0.1,
    seconds: 60,
    finishedAt,
  };
}
const NONE = { "read-scale": [], "seat-gauge": [], "find-largest": [] };
const READ = [round("read-scale", 8, 10, 4)];

test.each([
  [NONE, /^Begin with “Read the scale”/],
  [{ ...NONE, "read-scale": [round("read-scale", 7, 10, 4)] }, /^Take “Read the scale” again: 7 of 10 were right/],
  [{ ...NONE, "read-scale": READ }, /^Next is “Seat the gauge”: you have not taken it yet/],
  // the last round counts, not an earlier one that went well
  [
    { ...NONE, "read-scale": READ, "seat-gauge": [round("seat-gauge", 3, 5, 6), round("seat-gauge", 5, 5, 5)] },
    /^Take “Seat the gauge” again: 3 of 5/,
  ],
  [
    {
      "read-scale": READ,
      "seat-gauge": [round("seat-gauge", 4, 5, 2)],
      "find-largest": [round("find-largest", 3, 3, 6)],
    },
    /^All three go well. .* “Seat the gauge”/,
  ],
])("what to do next, case %#", (rounds, wanted) => {
  expect(describeNext(rounds)).toMatch(wanted);
});

test("times, errors and gauges in words", () => {
  expect([durationWords(42), durationWords(60), durationWords(102)]).toEqual(["42 s", "1 min 0 s", "1 min 42 s"]);
  expect([errorWords(0.1), errorWords(null)]).toEqual(["0.10 mm", "nothing read"]);
  expect(gaugesWords("seat-gauge", DRILL_GAUGES["seat-gauge"])).toBe("All");
  expect(gaugesWords("read-scale", ["steel-rule", "hook-gauge"])).toBe("Rule, Hook");
  expect([spell(-0.5), spell(2), spell(-0.001)]).toEqual(["−0.5", "2", "0"]);
});

describe("what is typed as an answer", () => {
  test.each([
    ["1.2", 1.2],
    ["1,2", 1.2],
    [" −3 ", -3],
    ["-3", -3],
    [".5", 0.5],
  ])("%j is %d", (text, value) => {
    expect(readAnswer(text, -5, 15, "Type it.")).toEqual({ value });
  });

  test.each([
    ["", "Type it."],
    ["   ", "Type it."],
    ["abc", "“abc” is no number. Write a number, for example 12.5."],
    ["1.2.3", "“1.2.3” is no number. Write a number, for example 12.5."],
    ["15.1", "From -5 to 15 mm."],
    ["-6", "From -5 to 15 mm."],
  ])("%j is refused: %s", (text, problem) => {
    expect(readAnswer(text, -5, 15, "Type it.")).toEqual({ problem });
  });
});
