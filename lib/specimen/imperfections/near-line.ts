import { clamp, hypot } from "../../math";
import { forEachPixel } from "../../surface";
import type { Field } from "../field";
import type { Point } from "../truth";

/** A pixel near a line, and where along the line its nearest point lies; mm. */
export interface NearLine {
  readonly k: number;
  readonly distance: number;
  readonly along: number;
  /** Left (1) or right (-1) of the line's way. */
  readonly side: 1 | -1;
  /** Nearest point of the line and unit direction of the line there. */
  readonly foot: Point;
  readonly way: Point;
}

/** Pixels within `reach` mm of a polyline, each with its nearest point on it, and the line's length. */
export function pixelsNear(
  { grid }: Pick<Field, "grid">,
  points: readonly Point[],
  reach: number,
): { near: NearLine[]; length: number } {
  const found = new Map<number, NearLine>();
  let length = 0;
  for (let n = 0; n + 1 < points.length; n++) {
    const [ax, ay] = points[n];
    const [bx, by] = points[n + 1];
    const ux = bx - ax;
    const uy = by - ay;
    const square = ux * ux + uy * uy || 1e-9;
    const facet = Math.sqrt(square);
    const way: Point = [ux / facet, uy / facet];
    const box = {
      x0: Math.min(ax, bx) - reach,
      x1: Math.max(ax, bx) + reach,
      y0: Math.min(ay, by) - reach,
      y1: Math.max(ay, by) + reach,
    };
    const start = length;
    forEachPixel(grid, box, (k, x, y) => {
      const t = clamp(((x - ax) * ux + (y - ay) * uy) / square, 0, 1);
      const footX = ax + t * ux;
      const footY = ay + t * uy;
      const ex = x - footX;
      const ey = y - footY;
      const distance = hypot(ex, ey);
      if (distance > reach) return;
      const old = found.get(k);
      if (old && old.distance <= distance) return;
      const side = ux * ey - uy * ex >= 0 ? 1 : -1;
      found.set(k, { k, distance, along: start + t * facet, side, foot: [footX, footY], way });
    });
    length += facet;
  }
  return { near: [...found.values()], length };
}
