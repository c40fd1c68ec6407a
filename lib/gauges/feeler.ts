import type { Mm } from "../math";
import type { Heights } from "./heights";
import { GAUGES } from "./kinds";
import { SEARCH_STEP, type Spot, stripAlong } from "./strip";

/** How a leaf, or several together, goes into a gap. */
export type LeafFit = "does-not-go" | "fits" | "loose";

/** Tries a leaf of `leaf` mm in a gap: it fits where one step more would not go. tryLeaf(1.24, 1.2) = "fits". */
export function tryLeaf(gap: Mm, leaf: Mm): LeafFit {
  if (leaf > gap + 1e-9) return "does-not-go";
  return gap - leaf < GAUGES.feeler.step - 1e-9 ? "fits" : "loose";
}

/**
 * Width of the gap that a leaf finds at a spot, pushed in `depth` mm below the plates' surface and square to the
 * direction of the turn: between the first metal on either side, over the whole width of the leaf. 0 where metal is in
 * the way, infinite where there is none on a side.
 */
export function gapAt(heights: Heights, spot: Spot, depth: Mm, reach: Mm = 10): Mm {
  const section = stripAlong(heights, spot, -reach, reach, GAUGES.feeler.thickness / 2, SEARCH_STEP / 2);
  const middle = section.findIndex(([along]) => along >= 0);
  if (middle < 0 || section[middle][1] > -depth) return 0;
  const wall = (direction: 1 | -1): Mm => {
    for (let n = middle; n >= 0 && n < section.length; n += direction) {
      if (section[n][1] <= -depth) continue;
      const [a, b] = [section[n - direction], section[n]];
      return Math.abs(a[0] + ((b[0] - a[0]) * (-depth - a[1])) / (b[1] - a[1]));
    }
    return Number.POSITIVE_INFINITY;
  };
  return wall(1) + wall(-1);
}
