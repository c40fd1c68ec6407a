import { expect, test } from "vitest";
import { type Load, worstWindow } from "@/lib/criteria";

const point = (place: number, amount = 1): Load => ({ from: place, to: place, amount });
const stretch = (from: number, to: number): Load => ({ from, to, amount: to - from });

// by hand
test.each<[string, Load[], number, number, number]>([
  ["nothing", [], 100, 300, 0],
  ["two stretches that one window holds", [stretch(10, 20), stretch(95, 110)], 100, 300, 25],
  ["two stretches that stick out of it", [stretch(10, 20), stretch(105, 120)], 100, 300, 15],
  ["a stretch longer than the window", [stretch(0, 150)], 100, 300, 100],
  ["a weld shorter than the window", [stretch(0, 10), stretch(70, 80)], 100, 80, 20],
  ["points nearer than the window", [point(0), point(99.9)], 100, 300, 2],
  ["points as far apart as the window", [point(0), point(100)], 100, 300, 1],
  // 0.1 + 100.2 is 100.30000000000001 in binary
  ["the same in figures that are not exact in binary", [point(0.1), point(100.3)], 100.2, 300, 1],
  ["points at both ends of a weld as long as the window", [point(0), point(100)], 100, 100, 2],
  // 300.7 - 100 + 100 is not 300.7 in binary for every length
  ["a point at the very end", [point(300.7)], 100, 300.7, 1],
  ["a point at the end of the window and a stretch that begins with it", [stretch(20, 60), point(120)], 100, 300, 41],
])("%s", (_, loads, width, length, sum) => {
  expect(worstWindow(loads, width, length).sum).toBeCloseTo(sum, 9);
});

test("the first of several windows that are as full is named", () => {
  expect(worstWindow([stretch(50, 60), stretch(250, 260)], 100, 300)).toEqual({ from: 0, to: 100, sum: 10 });
});
