import { expect, test } from "vitest";
import { describeStanding } from "@/app/(learner)/standing";
import type { SectionMark } from "@/lib/practice";

function section(
  face: SectionMark["section"],
  markThousandths: number,
  passMark: number,
  isPassed: boolean,
): SectionMark {
  return { section: face, passMark, markThousandths, isPassed, ruleVersion: "1.0" };
}

test.each([
  [[], 0, /^Nothing handed in yet. Your first weld is waiting/],
  [[], 1, /^Nothing handed in yet. Your first piece is on the bench/],
  [[], 2, /^Nothing handed in yet. Your first 2 pieces are on the bench/],
  [[[section("plate", 82_000, 70, true)]], 0, "You have handed in one piece; on the last one you passed."],
  [
    [[section("plate", 63_849, 70, false)]],
    0,
    "You have handed in one piece; on the last one the butt plate fell 6.2 marks short.",
  ],
  [
    [[section("cap", 82_000, 70, true), section("root", 70_000, 70, true)]],
    0,
    "You have handed in one piece; on the last one both faces passed.",
  ],
  [
    [[section("cap", 82_000, 70, true), section("root", 63_849, 70, false)], [], []],
    3,
    "You have handed in 3 pieces; on the last one the cap face passed and the root face fell 6.2 marks short. 3 more lie unfinished on your bench.",
  ],
])("case %#", (marks, openCount, sentence) => {
  expect(
    describeStanding(
      marks.map((of) => ({ marks: of })),
      openCount,
    ),
  ).toMatch(sentence);
});
