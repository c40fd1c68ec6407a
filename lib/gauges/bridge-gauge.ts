import { clamp, type Degrees, type Mm, roundTo } from "../math";
import { heightAt, type Surface } from "../surface";
import { BUTT_PLATE_LENGTH, BUTT_PLATE_WIDTH } from "../weld";

/**
 * A bridge gauge: a bar on two feet, both on the same side of a pointer at its end. Seen from above, the pointer's tip is
 * at (x, y) and the bar lies in direction `turn` (degrees, 0 along +x, 90 along +y of the face).
 */
export interface BridgePlacement {
  readonly x: Mm;
  readonly y: Mm;
  readonly turn: Degrees;
  /** From the tip to the nearer foot. */
  readonly offset: Mm;
  /** Between the feet. */
  readonly spacing: Mm;
}

/** What the gauge can do. Ranges and resolution are common practice for gauges of this kind, no source. */
export const BRIDGE_GAUGE = {
  name: "Bridge gauge",
  lowest: -8,
  highest: 12,
  resolution: 0.1,
  footWidth: 1,
  tipRadius: 0.3,
  steepest: 15,
  offset: { least: 3, most: 40, first: 13 },
  spacing: { least: 6, most: 40, first: 16 },
} as const;

export type BridgeRefusal = "off-plate" | "too-steep" | "out-of-range";

export type BridgeReading =
  | {
      readonly ok: true;
      /** Height (+) or depth (-) of the touched point over the line through the feet, mm, as read from the scale. */
      readonly reading: Mm;
      /** Before it is read to a tenth. */
      readonly exact: Mm;
      readonly seat: Seat;
    }
  | { readonly ok: false; readonly code: BridgeRefusal; readonly seat: Seat | null };

/** How the gauge stands: heights of what its feet and tip touch, and how far the bar leans. */
export interface Seat {
  readonly near: Mm;
  readonly far: Mm;
  readonly tip: Mm;
  readonly tilt: Degrees;
}

type Heights = Pick<Surface, "strip" | "plate">;

/** Step of the search for the highest point under a foot or the tip, mm: half a pixel of the finest surface. */
const SEARCH_STEP = 0.0625;

/** Places the gauge and reads it. Refuses where a foot or the tip is off the plate, leans too far, or runs off its scale. */
export function readBridgeGauge(surface: Heights, placement: BridgePlacement): BridgeReading {
  const at = pointsOf(placement);
  if (![at.tip, at.near, at.far].every(isOnPlate)) return { ok: false, code: "off-plate", seat: null };
  const near = highestUnder(surface, at.near, BRIDGE_GAUGE.footWidth / 2);
  const far = highestUnder(surface, at.far, BRIDGE_GAUGE.footWidth / 2);
  const tip = touchedByBall(surface, at.tip, BRIDGE_GAUGE.tipRadius);
  const slope = (far - near) / placement.spacing;
  const tilt = (Math.atan(slope) * 180) / Math.PI;
  const seat: Seat = { near, far, tip, tilt };
  if (Math.abs(tilt) > BRIDGE_GAUGE.steepest) return { ok: false, code: "too-steep", seat };
  // the pointer slides square to the bar
  const exact = (tip - (near - slope * placement.offset)) * Math.cos(Math.atan(slope));
  const reading = roundTo(exact, BRIDGE_GAUGE.resolution);
  if (reading < BRIDGE_GAUGE.lowest || reading > BRIDGE_GAUGE.highest) {
    return { ok: false, code: "out-of-range", seat };
  }
  return { ok: true, reading, exact, seat };
}

/** Plan positions of tip and feet, mm. */
export function pointsOf(placement: BridgePlacement): Record<"tip" | "near" | "far", { x: Mm; y: Mm }> {
  const angle = (placement.turn * Math.PI) / 180;
  const along = (distance: Mm) => ({
    x: placement.x + Math.cos(angle) * distance,
    y: placement.y + Math.sin(angle) * distance,
  });
  return { tip: along(0), near: along(placement.offset), far: along(placement.offset + placement.spacing) };
}

/** Bounds offset and spacing to what the gauge allows, turns to 0..360. */
export function adjusted(placement: BridgePlacement): BridgePlacement {
  const { offset, spacing } = BRIDGE_GAUGE;
  return {
    ...placement,
    turn: ((placement.turn % 360) + 360) % 360,
    offset: clamp(placement.offset, offset.least, offset.most),
    spacing: clamp(placement.spacing, spacing.least, spacing.most),
  };
}

const isOnPlate = (point: { x: Mm; y: Mm }): boolean =>
  point.x >= 0 && point.x <= BUTT_PLATE_LENGTH && Math.abs(point.y) <= BUTT_PLATE_WIDTH / 2;

/** A flat, round foot comes down on the highest point under it. */
function highestUnder(surface: Heights, point: { x: Mm; y: Mm }, radius: Mm): Mm {
  return highest(surface, point, radius, () => 0);
}

/** Height of the lowest point of a ball that comes down square to the plate until it touches. */
function touchedByBall(surface: Heights, point: { x: Mm; y: Mm }, radius: Mm): Mm {
  return highest(surface, point, radius, (square) => radius - Math.sqrt(Math.max(0, radius * radius - square)));
}

function highest(surface: Heights, point: { x: Mm; y: Mm }, radius: Mm, raised: (square: number) => Mm): Mm {
  const steps = Math.ceil(radius / SEARCH_STEP);
  let best = Number.NEGATIVE_INFINITY;
  for (let j = -steps; j <= steps; j++) {
    for (let i = -steps; i <= steps; i++) {
      const dx = (i * radius) / steps;
      const dy = (j * radius) / steps;
      const square = dx * dx + dy * dy;
      if (square > radius * radius * 1.0001) continue;
      const touch = heightAt(surface, point.x + dx, point.y + dy) - raised(square);
      if (touch > best) best = touch;
    }
  }
  return best;
}
