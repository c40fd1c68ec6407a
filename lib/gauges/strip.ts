import type { Degrees, Mm } from "../math";
import { type Heights, metalAt } from "./heights";

/** A line on plan: through (x, y) in direction `turn`, 0 along +x, 90 along +y. */
export interface Spot {
  readonly x: Mm;
  readonly y: Mm;
  readonly turn: Degrees;
}

/** A point of a section: mm along the line, and mm of height. */
export type SectionPair = readonly [along: Mm, height: Mm];

/** The search for the highest point goes in steps of at most this, mm: half a pixel of the finest surface. */
export const SEARCH_STEP: Mm = 0.0625;

/** Plan place of the point `along` mm along the line and `aside` mm to its left. */
export function placeOn(spot: Spot, along: Mm, aside: Mm = 0): { x: Mm; y: Mm } {
  const angle = (spot.turn * Math.PI) / 180;
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  return { x: spot.x + cos * along - sin * aside, y: spot.y + sin * along + cos * aside };
}

/** Offsets from -half to half, ends included, no further apart than `step`. */
export function offsets(half: Mm, step: Mm): readonly Mm[] {
  const count = Math.ceil(half / step);
  return count === 0 ? [0] : Array.from({ length: 2 * count + 1 }, (_, n) => ((n - count) * half) / count);
}

/** Section along a line at one distance aside of it. Where there is no metal, there are no points. */
export function sectionAlong(
  heights: Heights,
  spot: Spot,
  from: Mm,
  to: Mm,
  step: Mm = SEARCH_STEP,
  aside: Mm = 0,
): readonly SectionPair[] {
  return stripAlong(heights, spot, from, to, 0, step, aside);
}

/** The highest points of a strip `2 * half` mm wide along a line: what a blade of that thickness can come to rest on. */
export function stripAlong(
  heights: Heights,
  spot: Spot,
  from: Mm,
  to: Mm,
  half: Mm,
  step: Mm = SEARCH_STEP,
  aside: Mm = 0,
): readonly SectionPair[] {
  const across = offsets(half, 2 * SEARCH_STEP);
  const angle = (spot.turn * Math.PI) / 180;
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  const count = Math.max(1, Math.ceil((to - from) / step));
  const points: SectionPair[] = [];
  for (let n = 0; n <= count; n++) {
    const along = from + ((to - from) * n) / count;
    let best = Number.NEGATIVE_INFINITY;
    for (const offset of across) {
      const left = aside + offset;
      const height = metalAt(heights, spot.x + cos * along - sin * left, spot.y + sin * along + cos * left);
      if (height > best) best = height;
    }
    if (best > Number.NEGATIVE_INFINITY) points.push([along, best]);
  }
  return points;
}

/** Degrees by which a direction misses square to the weld, 0..90: offSquare({ turn: 280 }) = 10. */
export const offSquare = ({ turn }: Pick<Spot, "turn">): Degrees => Math.abs((((turn % 180) + 180) % 180) - 90);
