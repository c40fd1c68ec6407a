import { expect, test } from "vitest";
import { EXAMPLE_LINES, EXAMPLE_MARK } from "@/app/(learner)/rule/worked-example";
import { shownMark } from "@/lib/results";
import { call, truthItem } from "../../support/marking-cases";
import { markCap } from "../../support/marking-simulation";

test("the example on the page about marking is marked like any report", () => {
  const items = EXAMPLE_LINES.flatMap(({ there }, i) => (there ? [truthItem({ id: `there-${i}`, ...there })] : []));
  const calls = EXAMPLE_LINES.flatMap(({ written }, i) => (written ? [call({ id: `call-${i}`, ...written })] : []));
  const result = markCap(items, calls);
  expect(result.lines.map(({ earned }) => earned)).toEqual(EXAMPLE_LINES.map(({ marks }) => Math.round(marks * 1000)));
  expect(shownMark(result.earned)).toBe(EXAMPLE_MARK);
  expect(result.lines.map(({ kind }) => kind)).toEqual(["found", "partly", "partly", "missed", "false-call"]);
});
