import { describe, expect, test } from "vitest";
import { type EyeResult, rightOf, sumsByKind, sumsByThing } from "@/lib/eye";

const result = (kind: EyeResult["kind"], about: EyeResult["about"], isRight: boolean, error: number | null = null) => ({
  kind,
  about,
  isRight,
  error,
});

const RESULTS = [
  result("size", "surface-pore", true, 0.2),
  result("spot", null, true),
  result("size", "surface-pore", false, -1),
  result("spot", "scratch", false),
  result("size", "overlap", true, 0.4),
  result("spot", "surface-pore", true),
];

describe("what became of tasks", () => {
  test("is counted by kind, with the median of how far off and which way", () => {
    // by hand: |0.2|, |1|, |0.4| have the middle 0.4; -1, 0.2, 0.4 the middle 0.2
    expect(sumsByKind(RESULTS)).toEqual([
      { kind: "spot", asked: 3, right: 2, error: null },
      { kind: "size", asked: 3, right: 2, error: { median: 0.4, bias: 0.2 } },
    ]);
  });

  test("is counted by what was there, what went wrong most often first", () => {
    expect(sumsByThing(RESULTS)).toEqual([
      { about: "surface-pore", asked: 3, right: 2 },
      { about: "scratch", asked: 1, right: 0 },
      { about: null, asked: 1, right: 1 },
      { about: "overlap", asked: 1, right: 1 },
    ]);
  });

  test("may be nothing", () => {
    expect([rightOf([]), sumsByKind([]), sumsByThing([])]).toEqual([{ asked: 0, right: 0 }, [], []]);
  });
});
