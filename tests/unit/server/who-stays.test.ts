import { expect, test } from "vitest";
import { isStaying } from "@/app/_server/next/who-stays";

const at = (seconds: number) => new Date(1_000 * seconds);

test("whoever asks for Today again a moment later stays there; whoever comes back after a while passes through again", () => {
  const seen = new Map<string, number>();
  expect(isStaying(seen, "kim", at(0))).toBe(false);
  expect(isStaying(seen, "ola", at(1))).toBe(false);
  // two windows, or a page asked for twice
  expect(isStaying(seen, "kim", at(0.5))).toBe(false);
  expect(isStaying(seen, "kim", at(3.6))).toBe(true);
  expect(isStaying(seen, "kim", at(6.7))).toBe(true);
  expect(isStaying(seen, "kim", at(60))).toBe(false);
  expect([...seen.keys()], "nobody who has left is kept in mind").toEqual(["kim"]);
});

test("two windows that ask in turn stay there as one does, and so does a page that looks more slowly", () => {
  const seen = new Map<string, number>();
  const asked = [0, 1.5, 3, 4.5].map((seconds) => isStaying(seen, "kim", at(seconds)));
  expect(asked).toEqual([false, false, true, false]);
  expect(isStaying(seen, "kim", at(19))).toBe(true);
});
