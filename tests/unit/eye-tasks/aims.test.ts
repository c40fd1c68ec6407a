import { expect, test } from "vitest";
import { aimsOf, wantedFor } from "@/lib/eye-tasks";
import type { Overview } from "@/lib/progress";

const counts = (total: number, found: number, namedRight: number) => ({
  total,
  found,
  namedRight,
  namedAlike: 0,
  calledAs: {},
  size: { n: 0, sum: 0, sumOfSquares: 0 },
});
const TYPES = {
  "surface-pore": counts(10, 10, 10),
  overlap: counts(10, 2, 2),
  "crater-crack": counts(10, 10, 0),
  spatter: counts(2, 0, 0),
  "stray-arc": counts(4, 4, 4),
} as unknown as Overview["types"];

test("what is missed and what is misnamed comes more often; two of a type say nothing yet", () => {
  const { weight } = aimsOf({ types: TYPES }, []);
  expect(weight("surface-pore")).toBe(1);
  // 1 and 4 times the eight tenths that are missed
  expect(weight("overlap")).toBeCloseTo(4.2);
  expect(weight("crater-crack")).toBe(4);
  expect([weight("spatter"), weight("burn-through")]).toEqual([1, 1]);
});

test("what is taken for something that a tutor set comes more often than the rest", () => {
  const { weight, set } = aimsOf({ types: {} }, ["crater-crack"]);
  expect(set).toEqual(["crater-crack"]);
  expect(weight("crater-pipe")).toBeGreaterThan(weight("overlap"));
});

test("new is what somebody has never met, once they have met some, unless it is set", () => {
  expect(aimsOf({ types: {} }, []).isNew("overlap")).toBe(false);
  const { isNew } = aimsOf({ types: TYPES }, ["burn-through"]);
  expect([isNew("overlap"), isNew("root-fusion"), isNew("burn-through")]).toEqual([false, true, false]);
});

test("pieces are wanted for what is set and for what is missed or misnamed most, not for what comes right", () => {
  expect(wantedFor(aimsOf({ types: TYPES }, ["burn-through"]))).toEqual(["burn-through", "overlap", "crater-crack"]);
  expect(wantedFor(aimsOf({ types: {} }, []))).toEqual([]);
});
