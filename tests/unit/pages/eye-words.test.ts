import { describe, expect, test } from "vitest";
import { moved } from "@/app/_eye/end-marks";
import { offWords } from "@/app/_eye/eye-sums";
import { questionOf } from "@/app/_eye/question-words";
import { setDrillWords } from "@/app/_eye/set-drill-words";
import { toldWords } from "@/app/_eye/told-words";
import type { AskedTask, EyeAnswer, ShownThing, ToldTask } from "@/lib/eye";
import { CLUTTER_WORDS, IMPERFECTION_TYPES, imperfection } from "@/lib/imperfections";

const asked = (kind: AskedTask["kind"], rest: Partial<AskedTask> = {}): AskedTask => ({
  id: "t",
  number: 1,
  kind,
  windows: [{ face: "cap", length: 42, width: 28 }],
  type: null,
  options: null,
  estimate: null,
  ...rest,
});
const thing = (what: ShownThing["what"], name: ShownThing["name"], rest: Partial<ShownThing> = {}): ShownThing => ({
  window: 0,
  what,
  name,
  outline: [],
  from: 0,
  to: 0,
  isTarget: true,
  ...rest,
});
const told = (answer: EyeAnswer, right: EyeAnswer, isRight: boolean, rest: Partial<ToldTask> = {}): ToldTask => ({
  answer,
  right,
  isRight,
  things: [],
  error: null,
  allowed: null,
  ...rest,
});

describe("what is told of an answer", () => {
  const spot = (isThere: boolean): EyeAnswer => ({ kind: "spot", isThere });

  test("says what was passed over and how it looks", () => {
    const words = toldWords(
      asked("spot"),
      told(spot(false), spot(true), false, { things: [thing("imperfection", "overlap")] }),
    );
    expect(words[0]).toBe("You passed over it: Overlap (506).");
    expect(words[1]).toBe(imperfection("overlap").looks);
  });

  test("says of clutter that was called what it is and how to tell", () => {
    const words = toldWords(
      asked("spot"),
      told(spot(true), spot(false), false, { things: [thing("clutter", "scratch")] }),
    );
    expect(words).toEqual([CLUTTER_WORDS.scratch.there, CLUTTER_WORDS.scratch.tell]);
  });

  test("puts what is mixed up side by side", () => {
    const words = toldWords(
      asked("name"),
      told({ kind: "name", type: "crater-pipe" }, { kind: "name", type: "crater-crack" }, false, {
        things: [thing("imperfection", "crater-crack")],
      }),
    );
    expect(words.join(" ")).toContain("It is crater crack (104), not end crater pipe.");
    for (const type of ["crater-crack", "crater-pipe"] as const)
      expect(words.join(" ")).toContain(imperfection(type).looks);
  });

  test("says of ends and sizes how far off and which way", () => {
    const ends = told({ kind: "ends", from: 8, to: 40 }, { kind: "ends", from: 10, to: 50 }, false, {
      error: -10,
      allowed: 5,
    });
    expect(toldWords(asked("ends"), ends)[1]).toBe(
      "Your start is 2\u00a0mm beyond it, your end 10\u00a0mm short of it.",
    );
    const size = told({ kind: "size", value: 3 }, { kind: "size", value: 2.3 }, false, { error: 0.7, allowed: 0.5 });
    expect(toldWords(asked("size", { estimate: "diameter" }), size)[0]).toBe(
      "It is 2.3\u00a0mm across its largest mouth: you said 3\u00a0mm, 0.7\u00a0mm too much.",
    );
  });
});

test("a question names what it is about and its tolerance, for every imperfection", () => {
  for (const type of IMPERFECTION_TYPES)
    expect(questionOf(asked("pair", { type })).asks).toMatch(/^Which one shows: \S.*\?$/);
  expect(questionOf(asked("size", { type: "surface-pore", estimate: "diameter" })).hint).toContain(
    "0.5\u00a0mm, or 15\u00a0%",
  );
  expect(questionOf(asked("ends", { type: "overlap" })).hint).toContain("5\u00a0mm, or a tenth");
});

test("which way somebody is off is told by its kind", () => {
  const sum = { asked: 4, right: 2 };
  expect(offWords({ ...sum, kind: "size", error: { median: 0.62, bias: -0.5 } })).toBe(
    "0.6\u00a0mm, mostly too little",
  );
  expect(offWords({ ...sum, kind: "ends", error: { median: 3, bias: 2 } })).toBe("3\u00a0mm, mostly beyond its ends");
  expect(offWords({ ...sum, kind: "size", error: { median: 0.4, bias: 0 } })).toBe("0.4\u00a0mm, either way");
});

test("a set drill is told with what it is about", () => {
  expect(setDrillWords({ drill: "mixed", types: [] })).toBe("Mixed round");
  expect(setDrillWords({ drill: "name", types: ["overlap", "surface-pore", "stray-arc"] })).toMatch(
    /^Name it, mostly on overlap, surface pore and /,
  );
});

test.each([
  ["from", 12.34, { from: 12.3, to: 50 }],
  ["from", -3, { from: 0, to: 50 }],
  ["from", 70, { from: 49.9, to: 50 }],
  ["to", 5, { from: 10, to: 10.1 }],
  ["to", 99, { from: 10, to: 84 }],
] as const)("a mark stays in its window and on its side of the other: %s to %d", (mark, to, after) => {
  expect(moved({ from: 10, to: 50 }, mark, to, 84)).toEqual(after);
});
