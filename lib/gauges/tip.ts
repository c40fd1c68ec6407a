import type { Degrees, Mm } from "../math";
import type { Heights } from "./heights";
import { type Pose, toGauge } from "./pose";
import { offsets, SEARCH_STEP, type SectionPair, type Spot, sectionAlong, stripAlong } from "./strip";

type Point = { readonly radius: Mm; readonly halfAngle: Degrees; readonly rodRadius: Mm };

/**
 * How far above its lowest point a pointed rod is at distance `from` its axis, mm: round at the end, then a cone.
 * liftOf({ radius: 0.3, ... }, 0) = 0.
 */
export function liftOf({ radius, halfAngle }: Point, from: Mm): Mm {
  const angle = (halfAngle * Math.PI) / 180;
  const seam = radius * Math.cos(angle);
  if (from <= seam) return radius - Math.sqrt(radius * radius - from * from);
  return radius * (1 - Math.sin(angle)) + (from - seam) / Math.tan(angle);
}

/** The part of a segment whose first coordinate lies in a window, or null. */
export function clipped(a: SectionPair, b: SectionPair, low: Mm, high: Mm): readonly [SectionPair, SectionPair] | null {
  const [first, last] = a[0] <= b[0] ? [a, b] : [b, a];
  if (last[0] < low || first[0] > high) return null;
  const at = (u: Mm): SectionPair =>
    last[0] === first[0] ? first : [u, first[1] + ((last[1] - first[1]) * (u - first[0])) / (last[0] - first[0])];
  return [first[0] < low ? at(low) : first, last[0] > high ? at(high) : last];
}

/** Highest w of a polyline of [u, w] between two u; null where none of it lies there. */
export function highestBetween(points: readonly SectionPair[], low: Mm, high: Mm): Mm | null {
  let best = Number.NEGATIVE_INFINITY;
  for (let n = 1; n < points.length; n++) {
    const part = clipped(points[n - 1], points[n], low, high);
    if (part) best = Math.max(best, part[0][1], part[1][1]);
  }
  return best === Number.NEGATIVE_INFINITY ? null : best;
}

/** The same lines with u and w changed over: for what moves along the sole. */
export const changedOver = (points: readonly SectionPair[]): readonly SectionPair[] =>
  points.map(([u, w]) => [w, u] as const);

/** What a section has to cover so that a leaning gauge's part at u finds the metal however far it runs, mm. */
const reachOf = (pose: Pose, u: Mm, half: Mm, run: Mm): readonly [Mm, Mm] => {
  const angle = (pose.tilt * Math.PI) / 180;
  const middle = pose.along + u * Math.cos(angle);
  const room = half + run * Math.abs(Math.sin(angle)) + 2 * SEARCH_STEP;
  return [middle - room, middle + room];
};

/** Height over the seated reference, mm, at which a flat end at u, coming down square to it, meets the metal. */
export function touchFlat(
  heights: Heights,
  spot: Spot,
  pose: Pose,
  end: { readonly u: Mm; readonly length: Mm; readonly thickness: Mm; readonly run: Mm },
): Mm | null {
  const [from, to] = reachOf(pose, end.u, end.length / 2, end.run);
  const strip = toGauge(pose, stripAlong(heights, spot, from, to, end.thickness / 2));
  return highestBetween(strip, end.u - end.length / 2, end.u + end.length / 2);
}

/**
 * Height over the seated reference, mm, at which a pointed rod's lowest point stands when the rod meets the metal, and
 * whether it is the round end that touches or the flank above it.
 */
export function touchPoint(
  heights: Heights,
  spot: Spot,
  pose: Pose,
  rod: Point & { readonly u: Mm; readonly run: Mm },
): { readonly height: Mm; readonly by: "end" | "flank" } | null {
  const [from, to] = reachOf(pose, rod.u, rod.rodRadius, rod.run);
  const seam = rod.radius * Math.cos((rod.halfAngle * Math.PI) / 180);
  let best = Number.NEGATIVE_INFINITY;
  let by: "end" | "flank" = "end";
  for (const aside of offsets(rod.rodRadius, SEARCH_STEP)) {
    const half = Math.sqrt(Math.max(0, rod.rodRadius ** 2 - aside ** 2));
    const line = toGauge(pose, sectionAlong(heights, spot, from, to, SEARCH_STEP / 2, aside));
    for (const [u, w] of line) {
      if (Math.abs(u - rod.u) > half) continue;
      const out = Math.hypot(u - rod.u, aside);
      const height = w - liftOf(rod, out);
      if (height > best) {
        best = height;
        by = out <= seam ? "end" : "flank";
      }
    }
  }
  return best === Number.NEGATIVE_INFINITY ? null : { height: best, by };
}
