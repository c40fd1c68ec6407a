import { describe, expect, test } from "vitest";
import { extentWords, lineWords, marks, mm, vagueStretch } from "@/app/_marks/line-words";
import type { TruthView } from "@/app/_marks/sheet-view";
import { CLUTTER, CLUTTER_WORDS } from "@/lib/imperfections";
import type { AccountLine } from "@/lib/results";

describe("words of the mark sheet", () => {
  test("lengths carry their unit and at most one decimal", () => {
    expect(mm(12)).toBe("12 mm");
    expect(mm(0.84)).toBe("0.8 mm");
  });

  test("extents of lines, points and lines of the report without a place", () => {
    expect(extentWords(112.4, 137.2)).toBe("112 to 137 mm");
    expect(extentWords(57, 57)).toBe("at 57 mm");
    expect(extentWords(57, null)).toBe("at 57 mm");
    expect(extentWords(null, null)).toBe("no place written");
  });

  test("a thousandth of a mark is not lost in words", () => {
    expect(marks(7350)).toBe("7.35");
    expect(marks(-500)).toBe("-0.50");
  });

  test("a covered miss tells no more than a stretch of 50 mm that holds its start", () => {
    expect(vagueStretch({ start: 137, face: "cap" })).toEqual({ words: "between 100 and 150 mm", middle: 125 });
    expect(vagueStretch({ start: 299, face: "root" }).words).toBe("between 250 and 300 mm");
    expect(vagueStretch({ start: 0, face: "cap" }).words).toBe("between 0 and 50 mm");
    // a fillet ends at 200 mm
    expect(vagueStretch({ start: 200, face: "fillet" }).words).toBe("between 150 and 200 mm");
  });
});

describe("why a line lost marks", () => {
  const part = (name: "found" | "type" | "end", share: number, full: number) => ({
    part: name,
    written: null,
    actual: null,
    error: null,
    tolerance: null,
    nothingFrom: null,
    share,
    full,
    earned: Math.round((full * share) / 1000),
  });
  const place = {
    stickOut: 17,
    stickOutTolerance: 8,
    stickOutNothingFrom: 20,
    beside: 0.5,
    besideTolerance: 3,
    besideNothingFrom: 8,
    gap: null,
    share: 250,
  };
  const line: AccountLine = {
    kind: "partly",
    truthIds: ["cap-1"],
    callIds: ["a"],
    worth: 10_000,
    earned: 4_000,
    place: null,
    kept: 1,
    clutter: null,
    parts: [part("found", 1000, 4_000), part("type", 500, 2_500), part("end", 990, 1_000)],
    cost: 0,
    back: 0,
  };
  const truth: TruthView = {
    id: "cap-1",
    face: "cap",
    type: "overlap",
    start: 10,
    end: 40,
    across: 8,
    size: null,
    worst: [20, 8],
    outline: [],
    neutral: false,
  };

  test("names the dearest parts and leaves out what cost next to nothing", () => {
    expect(lineWords(line, [truth], []).story).toBe("You found it, but the name is off.");
  });

  test("says that the place scales every mark, and by how much", () => {
    const story = lineWords({ ...line, place, earned: -500 }, [truth], []).story;
    expect(story).toContain("too little of it fits");
    expect(story).toContain("reaches 17 mm past it (in full up to 8 mm), so every mark of this line counts 25 %.");
    expect(story).not.toContain("beside");
  });
});

describe("what a false call was made on", () => {
  const falseCall = (clutter: AccountLine["clutter"]): AccountLine => ({
    kind: "false-call",
    truthIds: [],
    callIds: ["a"],
    worth: 0,
    earned: -5000,
    place: null,
    kept: 1,
    parts: [],
    cost: -5000,
    back: 0,
    clutter,
  });
  const story = (clutter: AccountLine["clutter"]) => lineWords(falseCall(clutter), [], []).story;

  test("the line says what is really there, then what it costs", () => {
    expect(story({ id: "cap-clutter-1", kind: "chalk-mark" })).toMatch(
      /^There is a chalk mark here; nothing is wrong with the metal\. .* costs marks\.$/,
    );
    expect(story(null)).toMatch(/^Nothing to record was found at this place\. .* costs marks\.$/);
  });

  test("every kind has words of its own, in whole sentences", () => {
    const stories = CLUTTER.map((kind) => story({ id: "cap-clutter-1", kind }));
    expect(new Set(stories).size).toBe(CLUTTER.length);
    for (const { there, tell } of Object.values(CLUTTER_WORDS)) {
      for (const sentence of [there, tell]) expect(sentence).toMatch(/^[A-Z].*\.$/);
    }
  });
});
