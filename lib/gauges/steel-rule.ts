import { type Mm, roundTo } from "../math";
import type { Heights } from "./heights";
import { GAUGES } from "./kinds";
import { type SeatingRandom, seatingNoise } from "./noise";
import { type Refusal, refuse } from "./refusals";
import { placeOn, type Spot } from "./strip";

/** A place further from the rule's edge than this cannot be read off it, mm. Common practice, no source. */
const BESIDE_RULE: Mm = 12;

export interface RuleReading {
  readonly ok: true;
  /** Along the edge from nought to the point of the edge nearest to the place, mm. */
  readonly exact: Mm;
  readonly noise: Mm;
  readonly reading: Mm;
  /** From the edge to the place, mm, positive on the left of the direction in which the rule counts. */
  readonly aside: Mm;
}

/**
 * What a rule with its nought at `spot` and its edge in the direction of the turn shows beside a place. The eye's error
 * belongs to the rule and the place together.
 */
export function readRule(
  heights: Heights,
  spot: Spot,
  place: { readonly x: Mm; readonly y: Mm },
  random: SeatingRandom,
): RuleReading | Refusal {
  const { range, step } = GAUGES["steel-rule"];
  if (range === null) throw new Error("a rule has a scale");
  const { x0, x1, y0, y1 } = heights.extent;
  const isOn = (at: { x: Mm; y: Mm }) => at.x >= x0 && at.x <= x1 && at.y >= y0 && at.y <= y1;
  if (!isOn(place)) return refuse("steel-rule", "off-plate");
  const lies = Array.from({ length: range.highest + 1 }, (_, along) => placeOn(spot, along)).some(isOn);
  if (!lies) return refuse("steel-rule", "no-support");
  const angle = (spot.turn * Math.PI) / 180;
  const dx = place.x - spot.x;
  const dy = place.y - spot.y;
  const exact = dx * Math.cos(angle) + dy * Math.sin(angle);
  const aside = dy * Math.cos(angle) - dx * Math.sin(angle);
  if (Math.abs(aside) > BESIDE_RULE) return refuse("steel-rule", "cannot-reach");
  const noise = seatingNoise(random, { kind: "steel-rule", ...spot, atX: place.x, atY: place.y });
  const reading = roundTo(exact + noise, step) + 0;
  if (reading < range.lowest || reading > range.highest) return refuse("steel-rule", "out-of-range");
  return { ok: true, exact, noise, reading, aside };
}
