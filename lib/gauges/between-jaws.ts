import type { Degrees, Mm } from "../math";
import type { Heights } from "./heights";
import { STEEPEST } from "./kinds";
import { lowestOf } from "./lowest";
import { BEAM } from "./placement";
import type { RefusalCode } from "./refusals";
import type { Seating } from "./seat";
import { type SectionPair, type Spot, stripAlong } from "./strip";

/** Turns smaller than this end the search, as the slope of the jaws. */
const SETTLED = 1e-6;
/** The hand holds it no steeper than this against the plate, as a slope. */
const MOST_SLOPE = Math.tan((STEEPEST * Math.PI) / 180);

/** A plate between two parallel jaws: how far apart they stand, square to them, and how the caliper lies. */
export interface Jawed {
  readonly apart: Mm;
  readonly seat: Seating;
}

/**
 * Closes two parallel jaws on a plate, from the edge that the spot is turned to as far in as the spot. They rest on the
 * highest of either face under their whole length and thickness, and the hand tips the caliper until they stand nearest
 * together. The fixed jaw lies under the plate: its face is the line w = 0 of the gauge.
 */
export function betweenJaws(
  heights: Heights,
  spot: Spot,
  thickness: Mm,
): Jawed | { readonly code: RefusalCode; readonly seat: null } {
  const { underside, extent } = heights;
  if (spot.x < extent.x0 || spot.x > extent.x1 || spot.y < extent.y0 || spot.y > extent.y1) {
    return { code: "off-plate", seat: null };
  }
  if (!underside) return { code: "one-face", seat: null };
  const over = stripAlong(heights, spot, 0, BEAM.from, thickness / 2);
  const under = stripAlong({ ...heights, heightAt: (x, y) => -underside(x, y) }, spot, 0, BEAM.from, thickness / 2);
  // the beam would stand in the metal
  if (over[over.length - 1][0] > BEAM.from - 1) return { code: "cannot-reach", seat: null };
  const apartAt = (slope: number) => (highest(over, slope) + highest(under, -slope)) / Math.hypot(1, slope);
  const slope = lowestOf(apartAt, -MOST_SLOPE, MOST_SLOPE, SETTLED);
  const tilt: Degrees = (Math.atan(slope) * 180) / Math.PI;
  const pose = { along: 0, height: -highest(under, -slope), tilt };
  const edge = over[over.length - 1][0];
  return {
    apart: apartAt(slope),
    seat: { pose, lean: tilt, contacts: [0, edge].map((u) => ({ u, part: "jaw" })) },
  };
}

/** How high the highest point stands over a line of a slope through nought. */
function highest(points: readonly SectionPair[], slope: number): Mm {
  let best = Number.NEGATIVE_INFINITY;
  for (const [s, h] of points) if (h - slope * s > best) best = h - slope * s;
  return best;
}
