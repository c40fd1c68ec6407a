import type { Degrees, Mm } from "../math";
import type { Heights } from "./heights";
import { measureInCorner } from "./in-corner";
import { GAUGES, STEEPEST } from "./kinds";
import type { FilletUse } from "./placement";
import { toSection } from "./pose";
import { type Refusal, refuse } from "./refusals";
import type { Seating } from "./seat";
import { offSquare } from "./strip";

/** One blade of the set held in the corner: for the leg on the plate it is turned to, or for the throat. */
export interface BladePlacement {
  readonly x: Mm;
  readonly turn: Degrees;
  readonly use: FilletUse;
  /** One of BLADE_SIZES. */
  readonly size: Mm;
}

/** How the weld compares with the blade: light under the blade's nib, contact, or the nib carries the blade. */
export type BladeFit = "too-small" | "fits" | "too-large";

/** Light is seen, and a blade that rides is felt, from this much on, mm. Common practice, no source. */
const SEEN_GAP: Mm = 0.15;

export interface BladeTrial {
  readonly ok: true;
  readonly placement: BladePlacement;
  /** How it stands: pushed home, or carried by its nib, clear of the corner, where the weld is too large for it. */
  readonly seat: Seating;
  /** What the blade's nib is held against: how far the weld reaches there, mm. */
  readonly reach: Mm;
  readonly fit: BladeFit;
}

/** Tries one blade: a weld of 5.3 mm is too large for 5 and too small for 5.5. */
export function tryBlade(heights: Heights, placement: BladePlacement): BladeTrial | Refusal {
  const { thickness } = GAUGES["fillet-blades"];
  if (offSquare(placement) > STEEPEST) return refuse("fillet-blades", "not-square");
  const found = measureInCorner(heights, placement, { use: placement.use, thickness, end: 1.6 });
  if ("code" in found) return refuse("fillet-blades", found.code, found.seat);
  const more = found.height - placement.size;
  const fit = more > SEEN_GAP ? "too-large" : more < -SEEN_GAP ? "too-small" : "fits";
  const seat = more > 0 ? carried(found.seat, placement.use, more) : found.seat;
  return { ok: true, placement, seat, reach: found.height, fit };
}

/** The blade as its nib keeps it from going home: off the other plate for a leg, out of the corner for a throat. */
function carried(seat: Seating, use: FilletUse, by: Mm): Seating {
  const [along, height] = use === "leg" ? toSection(seat.pose, by, 0) : toSection(seat.pose, 0, by);
  return { ...seat, pose: { ...seat.pose, along, height }, contacts: [{ u: use === "leg" ? by : 0, part: "nib" }] };
}
