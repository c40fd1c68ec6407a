import { expect, test } from "vitest";
import { randomJoinCode } from "@/app/_server/random-id";
import { joinCodeSchema, shownJoinCode, timeFactorSchema } from "@/lib/classes";

test.each(["KMT4RW", "kmt-4rw", " KMT 4RW ", "k-m-t-4-r-w"])("%j is typed for KMT4RW", (typed) => {
  expect(joinCodeSchema.parse(typed)).toBe("KMT4RW");
});

test.each(["", "KMT4R", "KMT4RWX", "KMTORW", "KMT1RW", "ÄMT4RW", "KMT_4RW"])("%j is no join code", (typed) => {
  expect(joinCodeSchema.safeParse(typed).success).toBe(false);
});

test("join codes that are made can be typed as they are shown, and differ", () => {
  const codes = Array.from({ length: 200 }, randomJoinCode);
  for (const code of codes) expect(joinCodeSchema.parse(shownJoinCode(code).toLowerCase())).toBe(code);
  // of 64 million codes, two among 200 are the same once in 3,000 runs
  expect(new Set(codes).size).toBeGreaterThanOrEqual(199);
});

test.each([1, 1.25, 1.1, 1.33, 2, 5])("%d is a time factor", (factor) => {
  expect(timeFactorSchema.safeParse(factor).success).toBe(true);
});

test.each([0.99, 0, -1, 5.01, 1.255, Number.NaN, Number.POSITIVE_INFINITY, "2"])("%s is no time factor", (factor) => {
  expect(timeFactorSchema.safeParse(factor).success).toBe(false);
});
