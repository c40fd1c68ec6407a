import { clamp, hypot } from "../../math";
import type { RandomStream } from "../../random";
import { gradient1, sampleAt } from "../../surface";
import type { Field } from "../field";
import type { Point } from "../truth";

const LONGEST_FACET = 2.2;
/** Places tried to either side when a knot looks for the nearest crease. */
const SETTLE_STEPS = 8;

/**
 * Crack line from a to b, mm: straight facets of uneven length (about `facet` mm) that turn to and fro by
 * about `jagged` radians as along grain boundaries, on a base line that wanders by up to about `wander` mm.
 */
export function crackPath(
  random: RandomStream,
  a: Point,
  b: Point,
  wander: number,
  facet = 0.55,
  jagged = 0.24,
): Point[] {
  const length = hypot(b[0] - a[0], b[1] - a[1]);
  const tx = (b[0] - a[0]) / length;
  const ty = (b[1] - a[1]) / length;
  const seed = random.seed();
  const points: Point[] = [a];
  let t = 0;
  let zigzag = 0;
  let turn: 1 | -1 = random.chance(0.5) ? 1 : -1;
  while (t < length) {
    const step = clamp(random.logNormal(facet, 0.55), 0.16, LONGEST_FACET);
    if (random.chance(0.7)) turn = -turn as 1 | -1;
    zigzag = zigzag * 0.7 + turn * step * Math.tan(Math.abs(random.normal(0.3 * jagged, jagged)));
    t += step;
    if (t > length - 0.12) break;
    const held = Math.min(1, t / 1.2, (length - t) / 1.2 + 0.15);
    const slow = wander * (0.8 * gradient1(t / 5.5, seed) + 0.4 * gradient1(t / 2, seed + 1));
    const off = (clamp(zigzag, -0.5, 0.5) + slow) * held;
    points.push([a[0] + tx * t - ty * off, a[1] + ty * t + tx * off]);
  }
  points.push(b);
  return points;
}

/**
 * Lets a crack find the creases: each knot moves across the line, at most `reach` mm, to the lowest metal near it, at a
 * price for moving and for moving otherwise than its neighbour.
 */
export function settleIntoCreases(field: Field, points: readonly Point[], reach: number): Point[] {
  let previous = 0;
  return points.map((point, n) => {
    if (n === 0 || n === points.length - 1) return point;
    const [ax, ay] = points[n - 1];
    const [bx, by] = points[n + 1];
    const length = hypot(bx - ax, by - ay) || 1;
    const nx = -(by - ay) / length;
    const ny = (bx - ax) / length;
    let best = Number.POSITIVE_INFINITY;
    let shift = 0;
    for (let step = -SETTLE_STEPS; step <= SETTLE_STEPS; step++) {
      const share = step / SETTLE_STEPS;
      const z = sampleAt(field.grid, field.z, point[0] + nx * share * reach, point[1] + ny * share * reach);
      const price = 12 * z + 0.25 * share * share + 0.9 * (share - previous) ** 2;
      if (price < best) {
        best = price;
        shift = share;
      }
    }
    previous = shift;
    return [point[0] + nx * shift * reach, point[1] + ny * shift * reach] as Point;
  });
}

/**
 * Breaks a line into pieces that overlap a little and lie side by side, the ends hooked towards each other (en echelon).
 * `apart` mm is the usual distance between neighbours.
 */
export function echelonPieces(
  random: RandomStream,
  points: readonly Point[],
  pieces: number,
  apart: number,
): Point[][] {
  if (pieces < 2 || points.length < 4 * pieces) return [points.slice()];
  const breaks = Array.from({ length: pieces - 1 }, (_, n) =>
    clamp(
      Math.round((points.length * (n + 1)) / pieces + random.normal(0, points.length * 0.06)),
      3,
      points.length - 4,
    ),
  ).sort((p, q) => p - q);
  const bounds = [0, ...breaks, points.length - 1];
  let side: 1 | -1 = random.chance(0.5) ? 1 : -1;
  return Array.from({ length: pieces }, (_, n) => {
    const from = Math.max(0, bounds[n] - (n > 0 ? 1 + random.integer(3) : 0));
    const piece = points.slice(from, bounds[n + 1] + 1);
    const offset = pieces > 1 ? side * apart * random.uniform(0.35, 0.8) : 0;
    side = -side as 1 | -1;
    const last = Math.max(1, piece.length - 1);
    return piece.map(([x, y], q) => {
      const outer = (n === 0 && q === 0) || (n === pieces - 1 && q === last);
      const hook = Math.abs((2 * q) / last - 1) ** 4;
      return outer ? ([x, y] as Point) : ([x, y + offset * (1 - 0.35 * hook)] as Point);
    });
  }).filter((piece) => piece.length > 2);
}

/**
 * A fork of a crack: leaves `parent` at a share of its knots, turned by `turn` radians from the way the parent runs there,
 * `reach` mm long.
 */
export function forkFrom(
  random: RandomStream,
  parent: readonly Point[],
  at: number,
  turn: number,
  reach: number,
): Point[] {
  const n = clamp(Math.round(at * (parent.length - 1)), 0, parent.length - 1);
  const [x, y] = parent[n];
  const [ax, ay] = parent[Math.max(0, n - 2)];
  const [bx, by] = parent[Math.min(parent.length - 1, n + 2)];
  const heading = Math.atan2(by - ay, bx - ax) + turn;
  return crackPath(
    random,
    [x, y],
    [x + reach * Math.cos(heading), y + reach * Math.sin(heading)],
    Math.min(0.2, 0.08 * reach),
    0.4,
    0.3,
  );
}

/** The part of a line up to where it first leaves low < y < high, mm. */
export function cutOff(points: readonly Point[], low: number, high: number): Point[] {
  const out = points.findIndex(([, y]) => y < low || y > high);
  return out < 0 ? points.slice() : points.slice(0, out);
}
