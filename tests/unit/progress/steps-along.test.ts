import { describe, expect, test } from "vitest";
import { findsEarlyAndLate, stepsAlong, type TruthObservation } from "@/lib/progress";
import { observedOf, truthOf } from "../../support/observed";

const find = (face: TruthObservation["face"], start: number, order: number | null): TruthObservation =>
  truthOf({
    truthId: `${face}-${start}`,
    face,
    start,
    end: start,
    order,
    found: order !== null,
    placed: order === null ? 0 : 1,
  });

test("steps are counted on each face by itself, in the order of the report, and misses are none", () => {
  // cap 10, 60, 40: one step along and one back; the root in between is a walk of its own
  const walked = [
    find("cap", 60, 3),
    find("cap", 10, 1),
    find("root", 5, 2),
    find("cap", 40, 4),
    find("cap", 90, null),
  ];
  expect(stepsAlong([observedOf(walked)])).toEqual({ along: 1, all: 2 });
  expect(stepsAlong([observedOf(walked), observedOf([find("root", 20, 2), find("root", 80, 5)])])).toEqual({
    along: 2,
    all: 3,
  });
});

test("a single find is no step", () => {
  expect(stepsAlong([observedOf([find("cap", 10, 1), find("root", 20, 2)])])).toEqual({ along: 0, all: 0 });
});

describe("early and late", () => {
  const counts = (truths: readonly TruthObservation[]) => {
    const { first, middle, last } = findsEarlyAndLate([observedOf(truths)]);
    return [first, middle, last].map(({ count, of }) => [count, of]);
  };
  const walked = [find("cap", 10, 1), find("cap", 100, 2), find("cap", 200, 3)];

  test("finds count where they were written, misses where the nearest find was", () => {
    // 190 lies nearest to the third, 60 nearer to the second, 50 nearer to the first
    const missed = [find("cap", 190, null), find("cap", 60, null), find("cap", 50, null)];
    expect(counts([...walked, ...missed])).toEqual([
      [1, 2],
      [1, 2],
      [1, 2],
    ]);
    // written from the far end, the same misses lie the other way round
    const back = walked.map((truth) => ({ ...truth, order: 4 - (truth.order ?? 0) }));
    expect(counts([...back, find("cap", 190, null)])).toEqual([
      [1, 2],
      [1, 1],
      [1, 1],
    ]);
  });

  test("each face has an order of its own, whatever was written between", () => {
    const cap = walked.map((truth, n) => ({ ...truth, order: 2 * n + 2 }));
    expect(counts([...cap, find("root", 10, 1), find("root", 90, 3), find("cap", 0, null)])).toEqual([
      [1, 2],
      [1, 1],
      [1, 1],
    ]);
  });

  test("neutral features, misalignment and faces with two finds are left out", () => {
    const neutral = { ...find("cap", 12, null), neutral: true };
    const bent = { ...find("cap", 0, null), type: "angular-misalignment" as const, end: 300 };
    const root = [find("root", 5, 4), find("root", 50, 5), find("root", 100, null)];
    expect(counts([...walked, neutral, bent, ...root])).toEqual([
      [1, 1],
      [1, 1],
      [1, 1],
    ]);
  });

  test("every third of seven finds has two or three", () => {
    expect(counts(Array.from({ length: 7 }, (_, n) => find("fillet", 10 * n, n + 1))).map(([, of]) => of)).toEqual([
      3, 2, 2,
    ]);
  });
});
