import { expect, test } from "vitest";
import { progressWords } from "@/app/(tutor)/desk/sittings/[id]/marks/[runId]/overrule-words";
import { LINE_LISTS } from "@/lib/review";

// what progress makes of each is tested with `observationsOf`; common practice, no source
test("a tutor is told that 0 makes a miss only where it does", () => {
  const told = LINE_LISTS.map((list) => progressWords({ list, worth: 5000, earned: 2000 }));
  expect(told.map((words) => words.includes("as missed"))).toEqual([true, false, false, false, false]);
  expect(new Set(told).size).toBe(LINE_LISTS.length);
  const below = progressWords({ list: "indications", worth: 5000, earned: -2000 });
  expect(below).not.toContain("as missed");
  expect(progressWords({ list: "indications", worth: 0, earned: -2000 })).toContain("no false call");
});
