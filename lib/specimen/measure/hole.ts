import { hypot, median } from "../../math";
import { forEachPixel, sampleAt } from "../../surface";
import type { Point } from "../truth";
import type { Heights } from "./finished";

/** A hole as measured, mm. */
export interface MeasuredHole {
  /** Deepest point below the plane of the rim. */
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
/** Points further off than this many median deviations (a neighbouring hole, a globule) do not tilt the plane. */
const OUTLIER = 3;
const LEAST_DEVIATION = 0.01;
const MOUTH_LEVEL = 0.35;
const MOUTH_SEARCH = 1.4;

/** Height of the metal round a hole at (dx, dy) from its middle, carried on over it, mm. */
type Rim = (dx: number, dy: number) => number;
interface RingPoint {
  readonly dx: number;
  readonly dy: number;
  readonly z: number;
}

/** Plane through the metal on the ring of 24 points at 1.55 r round a place; the median of those it is fitted to lies on it. */
function rimPlane(field: Heights, x: number, y: number, radius: number): Rim {
  const ring = Array.from({ length: RING_POINTS }, (_, n): RingPoint => {
    const angle = (2 * Math.PI * n) / RING_POINTS;
    const dx = RING * radius * Math.cos(angle);
    const dy = RING * radius * Math.sin(angle);
    return { dx, dy, z: sampleAt(field.grid, field.z, x + dx, y + dy) };
  });
  const rough = leastSquaresPlane(ring);
  const off = (p: RingPoint) => p.z - rough(p.dx, p.dy);
  const centre = median(ring.map(off));
  const limit = OUTLIER * Math.max(LEAST_DEVIATION, median(ring.map((p) => Math.abs(off(p) - centre))));
  const kept = ring.filter((p) => Math.abs(off(p) - centre) <= limit);
  const fine = leastSquaresPlane(kept);
  const shift = median(kept.map((p) => p.z - fine(p.dx, p.dy)));
  return (dx, dy) => fine(dx, dy) + shift;
}

function leastSquaresPlane(points: readonly RingPoint[]): Rim {
  const mean = (of: (p: RingPoint) => number) => points.reduce((sum, p) => sum + of(p), 0) / points.length;
  const mx = mean((p) => p.dx);
  const my = mean((p) => p.dy);
  const mz = mean((p) => p.z);
  const xx = mean((p) => (p.dx - mx) ** 2);
  const yy = mean((p) => (p.dy - my) ** 2);
  const xy = mean((p) => (p.dx - mx) * (p.dy - my));
  const xz = mean((p) => (p.dx - mx) * (p.z - mz));
  const yz = mean((p) => (p.dy - my) * (p.z - mz));
  const determinant = xx * yy - xy * xy;
  const slopeX = (xz * yy - yz * xy) / determinant;
  const slopeY = (yz * xx - xz * xy) / determinant;
  return (dx, dy) => mz + slopeX * (dx - mx) + slopeY * (dy - my);
}

const around = (x: number, y: number, reach: number) => ({
  x0: x - reach,
  x1: x + reach,
  y0: y - reach,
  y1: y + reach,
});

/**
 * The hole near (x, y) of about the given radius. Rim = plane through 24 points of the metal at 1.55 r, so that a hole on
 * sloping ground is read square to the ground; depth = what lies furthest below that plane within r; mouth = the pixels
 * within 1.4 r that lie deeper than 35 % of that depth, diameter from their area. Null if nothing lies lower than the rim.
 */
export function measureHole(field: Heights, x: number, y: number, radius: number): MeasuredHole | null {
  const { grid, z } = field;
  const rim = rimPlane(field, x, y, radius);
  let depth = 0;
  let deepest: Point = [x, y];
  forEachPixel(grid, around(x, y, radius), (k, px, py) => {
    const below = rim(px - x, py - y) - z[k];
    if (below <= depth || hypot(px - x, py - y) > radius) return;
    depth = below;
    deepest = [px, py];
  });
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
    if (rim(px - x, py - y) - z[k] <= MOUTH_LEVEL * depth || hypot(px - x, py - y) > reach) return;
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
