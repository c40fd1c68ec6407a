import { describe, expect, test } from "vitest";
import { chanceWords } from "@/app/_progress/class/chance-words";
import { cellWords, shadeOf } from "@/app/_progress/class/shade";
import { teachWords } from "@/app/_progress/class/teach-words";
import { IMPERFECTION_TYPES, type ImperfectionType } from "@/lib/imperfections";
import {
  classStanding,
  EMPTY_OVERVIEW,
  isOfMost,
  missedTypes,
  type Overview,
  readinessOf,
  worthSetting,
} from "@/lib/progress";

const NO_SIZES = { n: 0, sum: 0, sumOfSquares: 0 };

/** What somebody found of each type, with what the finds were called where it was not the right name. */
const learner = (
  found: { readonly [type in ImperfectionType]?: readonly [found: number, total: number] },
  calledAs: Overview["types"] = {},
): Overview => ({
  sections: {},
  types: {
    ...Object.fromEntries(
      Object.entries(found).map(([type, [count, total]]) => [
        type,
        { total, found: count, namedRight: count, namedAlike: 0, calledAs: { [type]: count }, size: NO_SIZES },
      ]),
    ),
    ...calledAs,
  },
});

describe("types that a class misses", () => {
  test("those most surely missed first, and a learner is judged by no fewer than four", () => {
    const missed = missedTypes([
      learner({ "surface-pore": [1, 4], "root-concavity": [9, 10] }),
      learner({ "surface-pore": [2, 4], "root-concavity": [8, 10] }),
      learner({ "surface-pore": [0, 3] }),
      EMPTY_OVERVIEW,
    ]);
    expect(missed.map(({ type }) => type)).toEqual(["surface-pore", "root-concavity"]);
    const [pore] = missed;
    expect(pore.found).toMatchObject({ count: 3, of: 11, needed: 9 });
    // half is not fewer than half, and three are too few to say
    expect([pore.judged, pore.belowHalf]).toEqual([2, 1]);
    expect(isOfMost(pore)).toBe(false);
    expect(pore.byLearner).toEqual([{ found: 1, total: 4 }, { found: 2, total: 4 }, { found: 0, total: 3 }, null]);
  });

  test("one learner's misses do not come before those of two who never find a type, nor are they said of most of the class", () => {
    const missed = missedTypes([
      learner({ "surface-pore": [0, 20], "root-concavity": [9, 20] }),
      learner({ "surface-pore": [0, 20] }),
    ]);
    expect(missed.map(({ type }) => type)).toEqual(["surface-pore", "root-concavity"]);
    expect(missed.map(isOfMost)).toEqual([true, false]);
  });

  test("cells say their number, and how dark they are only from four on", () => {
    expect([null, { found: 1, total: 3 }, { found: 3, total: 8 }].map(cellWords)).toEqual(["", "(1/3)", "3/8"]);
    const shades = [null, [0, 3], [10, 10], [8, 10], [5, 10], [3, 10], [2, 10], [0, 10]] as const;
    expect(shades.map((cell) => shadeOf(cell && { found: cell[0], total: cell[1] }))).toEqual([
      null,
      null,
      0,
      1,
      2,
      3,
      4,
      4,
    ]);
  });
});

describe("what to teach", () => {
  test("is said in at most three sentences: missed, confused, misread", () => {
    // 20 depths that are all half a millimetre too large but one
    const size = { n: 20, sum: 9600, sumOfSquares: 19 * 500 ** 2 + 100 ** 2 };
    const one = learner(
      { "surface-pore": [2, 10] },
      {
        "continuous-undercut": {
          total: 24,
          found: 20,
          namedRight: 14,
          namedAlike: 6,
          calledAs: { "continuous-undercut": 14, "intermittent-undercut": 6 },
          size,
        },
      },
    );
    const standing = classStanding([one, learner({ "surface-pore": [3, 10] }), learner({ "surface-pore": [9, 10] })]);
    expect(teachWords(standing)).toEqual([
      "Most of the class misses surface pore: 2 of 3 find fewer than half, together they find 14 of 30.",
      "Continuous undercut and intermittent undercut are taken for each other: 6 times, 30 % of the finds of either.",
      "Depths are read 0.5 mm too large on average, over 20 readings.",
    ]);
  });

  test("is not said while there is not enough, and how much that is", () => {
    expect(teachWords(classStanding([learner({ "surface-pore": [0, 12] })]))).toEqual([
      "Not enough yet to say what to teach: there were 12 imperfections to find so far, and it takes 20 of a type.",
    ]);
  });

  test("is nothing where all of it is found", () => {
    const [sentence, ...more] = teachWords(classStanding([learner({ "surface-pore": [24, 25] })]));
    expect(sentence).toMatch(/^Nothing stands out yet/);
    expect(more).toEqual([]);
  });
});

describe("what to set as a paper", () => {
  test("is what was missed, most surely missed first; advised is what is missed often, once enough is known", () => {
    const missed = missedTypes([
      learner({
        "surface-pore": [5, 30],
        "root-concavity": [12, 24],
        "transverse-crack": [0, 2],
        overlap: [29, 30],
        "poor-restart": [30, 30],
      }),
    ]);
    // found at 17 and 50 % of enough; found at 97 %; two are too few to say; of what was never missed nothing is offered
    expect(worthSetting(missed).map(({ type, isAdvised }) => [type, isAdvised])).toEqual([
      ["surface-pore", true],
      ["transverse-crack", false],
      ["root-concavity", true],
      ["overlap", false],
    ]);
  });

  test("is twelve at most to choose from, six of them advised", () => {
    const all = Object.fromEntries(IMPERFECTION_TYPES.map((type) => [type, [3, 30] as const]));
    const toSet = worthSetting(missedTypes([learner(all)]));
    expect(toSet).toHaveLength(12);
    expect(toSet.filter(({ isAdvised }) => isAdvised)).toEqual(toSet.slice(0, 6));
  });
});

describe("who is ready", () => {
  const passMarks = { plate: 70, fillet: 70 };

  test("a section without marks is left out, a learner without has no chance, and few marks are not enough", () => {
    const [plate, ...others] = readinessOf(
      [{ plate: [90_000, 91_000, 92_000, 93_000] }, { plate: [40_000] }, {}],
      passMarks,
    );
    expect(others).toEqual([]);
    expect(plate.learners.map(chanceWords)).toEqual([
      expect.stringMatching(/^about \d+ % \(\d+ to \d+ %\), by 4 marks$/),
      "not enough yet: one mark, 2 more",
      "no marks yet",
    ]);
    expect(plate.learners[0]?.chance).toBeGreaterThan(0.9);
  });
});
