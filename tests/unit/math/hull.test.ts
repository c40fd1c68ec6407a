import { describe, expect, test } from "vitest";
import { convexHull, hullWithRoom } from "@/lib/math";

const area = (corners: readonly (readonly [number, number])[]) =>
  corners.reduce((sum, [x, y], n) => {
    const [nextX, nextY] = corners[(n + 1) % corners.length];
    return sum + (x * nextY - nextX * y) / 2;
  }, 0);

describe("convex hull", () => {
  test("a square with points inside and on its edges is its four corners, counter-clockwise", () => {
    const hull = convexHull([
      [0, 0],
      [2, 0],
      [1, 0],
      [1, 1],
      [2, 2],
      [0, 2],
      [0, 1],
    ]);
    expect(hull).toEqual([
      [0, 0],
      [2, 0],
      [2, 2],
      [0, 2],
    ]);
    expect(area(hull)).toBe(4);
  });

  test("room round a straight crack: everything keeps the margin, and not much more", () => {
    const hull = hullWithRoom(
      [
        [10, 0],
        [30, 0],
      ],
      1,
    );
    // length times 2 plus a regular octagon with inradius 1, whose area is 8 tan(22.5 deg)
    expect(area(hull)).toBeCloseTo(20 * 2 + 8 * Math.tan(Math.PI / 8), 9);
    expect(Math.max(...hull.map(([, y]) => y))).toBeCloseTo(1, 9);
    expect(Math.min(...hull.map(([x]) => x))).toBeCloseTo(9, 9);
  });
});
