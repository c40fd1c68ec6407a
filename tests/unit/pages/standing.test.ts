import { expect, test } from "vitest";
import { describeStanding } from "@/app/(learner)/standing";
import type { SectionMark } from "@/lib/practice";

function section(face: "cap" | "root", markThousandths: number, passMark: number, isPassed: boolean): SectionMark {
  return { section: face, passMark, markThousandths, isPassed, ruleVersion: "1.0" };
}

test.each([
  [[], /^Nothing handed in yet/],
  [
    [[section("cap", 82_000, 70, true), section("root", 70_000, 70, true)]],
    "You have handed in one plate; on the last one both faces passed.",
  ],
  [
    [[section("cap", 82_000, 70, true), section("root", 63_849, 70, false)], [], []],
    "You have handed in 3 plates; on the last one the cap face passed and the root face fell 6.2 marks short.",
  ],
])("case %#", (marks, sentence) => {
  expect(describeStanding(marks.map((of) => ({ marks: of })))).toMatch(sentence);
});
