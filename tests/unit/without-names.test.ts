import { expect, test } from "vitest";
import { withoutNames } from "../../lib/workshop";

test.each([
  ["Kim Rowe left early", "an erased learner left early"],
  ["kim.rowe’s lamp, says KIM ROWE.", "an erased learner’s lamp, says an erased learner."],
  ["Kim Rowell and skim rowers stay", "Kim Rowell and skim rowers stay"],
])("%s", (text, rest) => {
  expect(withoutNames(text, ["Kim Rowe", "kim.rowe"])).toBe(rest);
});
