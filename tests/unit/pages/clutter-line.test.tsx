import { renderToStaticMarkup } from "react-dom/server";
import { expect, test } from "vitest";
import { LineItem } from "@/app/_marks/line-item";
import type { AccountLine } from "@/lib/results";

const falseCall: AccountLine = {
  kind: "false-call",
  truthIds: [],
  callIds: ["a"],
  worth: 0,
  earned: -7100,
  place: null,
  kept: 1,
  parts: [],
  cost: -7100,
  back: 0,
  clutter: { id: "cap-clutter-2", kind: "chalk-mark" },
};
const call = {
  id: "a",
  face: "cap",
  type: "continuous-undercut",
  start: 100,
  end: 112,
  across: 9,
  size: null,
  sentence: null,
} as const;

function lineOf(line: AccountLine, isChosen: boolean): string {
  const nothing = () => undefined;
  return renderToStaticMarkup(
    <LineItem
      line={line}
      truths={[]}
      calls={[call]}
      isChosen={isChosen}
      isCovered={false}
      missNumber={0}
      onChoose={nothing}
      onUncover={nothing}
    />,
  );
}

test("a false call on clutter says what is there, opened on the screen and closed in print", () => {
  for (const isChosen of [true, false]) {
    const html = lineOf(falseCall, isChosen);
    expect(html).toContain("no imperfection, but a chalk mark");
    expect(html).toContain("There is a chalk mark here; nothing is wrong with the metal.");
  }
  expect(lineOf(falseCall, false)).toMatch(/class="hidden [^"]*print:block".*There is a chalk mark/);
});

test("a false call on nothing says that nothing is there", () => {
  const html = lineOf({ ...falseCall, clutter: null }, true);
  expect(html).toContain("nothing there");
  expect(html).not.toContain("chalk");
});
