import { expect, test } from "vitest";
import { randomJoinCode } from "@/app/_server/random-id";
import { joinCodeSchema, shownJoinCode } from "@/lib/classes";

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
