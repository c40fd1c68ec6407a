import { expect, test } from "vitest";
import { median } from "@/lib/math";

test("the median is the middle one, of an even number the mean of the two in the middle, and leaves its values alone", () => {
  const odd = [10, -2, 3.5];
  expect(median(odd)).toBe(3.5);
  expect(odd).toEqual([10, -2, 3.5]);
  // numbers, not text: 10 comes after 9
  expect(median([10, 9, 1, 100])).toBe(9.5);
  expect(median([7])).toBe(7);
  expect(median([])).toBeNaN();
  expect(median(Float64Array.of(5, 1, 3, 400, 500), 3)).toBe(3);
});
