import { forEachPixel, sampleAt } from "../../surface";
import type { Point } from "../truth";
import type { Heights } from "./finished";

/** A hole as measured, mm. */
export interface MeasuredHole {
  /** Deepest point below the rim level. */
  readonly depth: number;
  /** Diameter of the circle that has the mouth's area. */
  readonly diameter: number;
  /** Middle of the mouth (centre of its area). */
  readonly middle: Point;
  readonly deepest: Point;
  /** Extent of the mouth along and across. */
  readonly start: number;
  readonly end: number;
  readonly low: number;
  readonly high: number;
}

const RING = 1.55;
const RING_POINTS = 24;
const MOUTH_LEVEL = 0.35;
const MOUTH_SEARCH = 1.4;

/** Median height on the ring of 24 points at 1.55 r round a place. */
function rimLevel(field: Heights, x: number, y: number, radius: number): number {
  const heights = Array.from({ length: RING_POINTS }, (_, n) => {
    const angle = (2 * Math.PI * n) / RING_POINTS;
    const reach = RING * radius;
    return sampleAt(field.grid, field.z, x + reach * Math.cos(angle), y + reach * Math.sin(angle));
  }).sort((a, b) => a - b);
  return 0.5 * (heights[RING_POINTS / 2 - 1] + heights[RING_POINTS / 2]);
}

const around = (x: number, y: number, reach: number) => ({
  x0: x - reach,
  x1: x + reach,
  y0: y - reach,
  y1: y + reach,
});

/**
 * The hole near (x, y) of about the given radius. Rim level = median of 24 heights at 1.55 r; depth = rim level less the
 * lowest pixel within r; mouth = the pixels within 1.4 r that lie deeper than 35 % of that depth, diameter from their
 * area. Null if nothing lies lower than the rim.
 */
export function measureHole(field: Heights, x: number, y: number, radius: number): MeasuredHole | null {
  const { grid, z } = field;
  const rim = rimLevel(field, x, y, radius);
  let lowest = Number.POSITIVE_INFINITY;
  let deepest: Point = [x, y];
  forEachPixel(grid, around(x, y, radius), (k, px, py) => {
    if (z[k] >= lowest || Math.hypot(px - x, py - y) > radius) return;
    lowest = z[k];
    deepest = [px, py];
  });
  const depth = rim - lowest;
  if (!(depth > 0)) return null;
  const reach = MOUTH_SEARCH * radius;
  const half = 0.5 / grid.perMm;
  let count = 0;
  let sumX = 0;
  let sumY = 0;
  let start = Number.POSITIVE_INFINITY;
  let end = Number.NEGATIVE_INFINITY;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  forEachPixel(grid, around(x, y, reach), (k, px, py) => {
    if (rim - z[k] <= MOUTH_LEVEL * depth || Math.hypot(px - x, py - y) > reach) return;
    count++;
    sumX += px;
    sumY += py;
    start = Math.min(start, px - half);
    end = Math.max(end, px + half);
    low = Math.min(low, py - half);
    high = Math.max(high, py + half);
  });
  return {
    depth,
    diameter: (2 * Math.sqrt(count / Math.PI)) / grid.perMm,
    middle: [sumX / count, sumY / count],
    deepest,
    start,
    end,
    low,
    high,
  };
}
