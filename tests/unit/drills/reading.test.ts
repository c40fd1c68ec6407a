import { describe, expect, it, test } from "vitest";
import { DRILL_GAUGES, drawReadingTask, judgeReading, type ReadingTask, slipWords } from "@/lib/drills";
import { nameSlip } from "@/lib/drills/reading/slips";
import { GAUGES } from "@/lib/gauges";
import { randomStream } from "@/lib/random";
import { readByEye } from "./support/read-drawing";

const KINDS = DRILL_GAUGES["read-scale"];
const drawn = new Map<string, ReadingTask>();
/** A task by its number, drawn once for all that is asked of it: each sets a gauge down on work of its own. */
function draw(kind: (typeof KINDS)[number], n: number): ReadingTask {
  const name = `reading/${kind}/${n}`;
  const task = drawn.get(name) ?? drawReadingTask(randomStream(name), [kind]);
  drawn.set(name, task);
  return task;
}

const rangeOf = (kind: (typeof KINDS)[number]) => {
  const { range } = GAUGES[kind];
  if (!range) throw new Error(`${kind} has no scale`);
  return range;
};

describe("scales to read", () => {
  test.each(KINDS)("of the %s are spread evenly over all of it, below nought too", (kind) => {
    const { lowest, highest } = rangeOf(kind);
    const { step } = GAUGES[kind];
    const count = 1000;
    const keys = Array.from({ length: count }, (_, n) => draw(kind, n).key);
    const nearEnd = 0.02 * (highest - lowest);
    expect(Math.min(...keys) - lowest).toBeLessThan(nearEnd);
    expect(highest - Math.max(...keys)).toBeLessThan(nearEnd);
    for (const key of keys) expect(key >= lowest && key <= highest).toBe(true);
    // 20 bins; chi square with 19 degrees of freedom is beyond 43.82 once in a thousand (published tables)
    const lines = Math.round((highest - lowest) / step) + 1;
    const binOf = (line: number) => Math.floor((20 * line) / lines);
    const sizes = Array.from({ length: 20 }, () => 0);
    for (let line = 0; line < lines; line++) sizes[binOf(line)]++;
    const found = Array.from({ length: 20 }, () => 0);
    for (const key of keys) found[binOf(Math.round((key - lowest) / step))]++;
    const chiSquare = found.reduce((sum, seen, bin) => {
      const expected = (count * sizes[bin]) / lines;
      return sum + (seen - expected) ** 2 / expected;
    }, 0);
    expect(chiSquare).toBeLessThan(43.82);
    const below = keys.filter((key) => key < 0).length / count;
    expect(Math.abs(below - Math.round(Math.max(0, -lowest) / step) / lines)).toBeLessThan(0.03);
  });

  test.each(KINDS)("of the %s have the key that is read off the drawn lines", (kind) => {
    for (let n = 0; n < 250; n++) {
      const task = draw(kind, n);
      expect(readByEye(task), JSON.stringify({ ...task, heights: null })).toBeCloseTo(task.key, 9);
    }
  });

  it("mix the gauges that were chosen, and no others", () => {
    const kinds = Array.from({ length: 200 }, (_, n) =>
      drawReadingTask(randomStream(`mixed/${n}`), ["depth-gauge", "steel-rule"]),
    ).map(({ kind }) => kind);
    expect(new Set(kinds)).toEqual(new Set(["depth-gauge", "steel-rule"]));
  });

  it("stand on work that the moving part touches, or clear of it where the gauge has no room", () => {
    let touching = 0;
    for (const kind of KINDS) {
      for (let n = 0; n < 150; n++) {
        const task = draw(kind, n);
        if (task.kind === "steel-rule") continue;
        // what the knife edge of the leg's slide lies over the plate is the most there is between scale and metal
        expect(Math.abs(task.noise), `${kind} ${task.position}`).toBeLessThan(0.12);
        if (task.kind !== "height-gauge" || task.position <= 7) touching++;
      }
    }
    expect(touching).toBeGreaterThan(400);
  });
});

describe("a reading", () => {
  test.each([
    ["height-gauge", 3.7, 3.6, true],
    ["height-gauge", 3.7, 3.8, true],
    ["height-gauge", 3.7, 3.9, false],
    ["height-gauge", -0.1, 0, true],
    ["depth-gauge", 0.4, 0.2, false],
    ["steel-rule", 120.5, 121, true],
    ["steel-rule", 120.5, 121.5, false],
  ] as const)("of the %s at %s typed as %s: %s", (kind, key, typed, isRight) => {
    expect(judgeReading({ kind, key }, typed)).toMatchObject({ isRight, error: expect.closeTo(typed - key, 9) });
  });
});

describe("the slip behind a wrong reading", () => {
  // each wrong value worked out by hand from how the slip is made
  test.each([
    ["height-gauge", -2.3, 2.3, "sign"],
    ["hook-gauge", 0.4, -0.4, "sign"],
    // main scale -3 and line 7, taken as -3.7, or as -2.7
    ["height-gauge", -2.3, -3.7, "below-nought"],
    ["height-gauge", -2.3, -2.7, "below-nought"],
    // main scale 3 and line 7: 3 + 7, or where they coincide and tenths besides
    ["height-gauge", 3.7, 10, "line-as-mm"],
    ["height-gauge", 3.7, 10.7, "line-as-mm"],
    // the vernier's 10 stands at 12.7: the mm before it is 12
    ["height-gauge", 3.7, 12.7, "wrong-end"],
    ["fillet-gauge", 3.7, 12, "wrong-end"],
    ["height-gauge", 3.7, 4.7, "whole-mm"],
    ["height-gauge", 3.7, 2.7, "whole-mm"],
    ["depth-gauge", 3.7, 4.7, "whole-mm"],
    ["steel-rule", 103.5, 102.5, "whole-mm"],
    // three lines back from 4 instead of seven up from 3
    ["depth-gauge", 3.7, 3.3, "counted-back"],
    ["steel-rule", 103.5, 113.5, "ten-mm"],
    ["height-gauge", 3.7, 3, "parts-left-out"],
    ["depth-gauge", 3.7, 4, "parts-left-out"],
    ["fillet-gauge", 13.7, 0.7, "parts-only"],
    ["steel-rule", 103.5, 10.5, "decimal-point"],
    ["depth-gauge", 0.7, 7, "decimal-point"],
    ["height-gauge", 3.7, 5.2, null],
    ["steel-rule", 103.5, 150, null],
  ] as const)("%s at %s typed as %s: %s", (kind, right, typed, slip) => {
    expect(nameSlip(kind, right, typed)).toBe(slip);
    expect(judgeReading({ kind, key: right }, typed).slip).toBe(slip);
    if (slip) expect(slipWords(slip)).toMatch(/^[A-Z].*\.$/);
  });

  it("is not looked for where the reading is right", () => {
    // 0.1 less is what reading the whole mm alone comes to at 3.1
    expect(judgeReading({ kind: "height-gauge", key: 3.1 }, 3)).toMatchObject({ isRight: true, slip: null });
  });
});
