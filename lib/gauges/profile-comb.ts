import type { Mm } from "../math";
import type { Heights } from "./heights";
import { GAUGES } from "./kinds";
import type { Spot } from "./strip";
import { touchPoint } from "./tip";

/** Between pins, mm, and how many there are: 80 mm of them. */
const PITCH: Mm = 0.8;
const PINS = 101;
/** How far a pin can slide, mm. */
export const PIN_RUN: Mm = 40;

/** One pin of a comb: where along it, and the height its round end came to; null where it found no metal. */
export interface Pin {
  readonly at: Mm;
  readonly height: Mm | null;
}

/**
 * Presses a profile comb down with its middle at the spot and its row in the direction of the turn, held square to the
 * field that is looked at. The pins keep the shape, to be held against another. A pin whose metal lies more than the
 * run of a pin below the highest stays where its run ends.
 */
export function pressComb(heights: Heights, spot: Spot): readonly Pin[] {
  const tip = GAUGES["profile-comb"].moving?.tip;
  if (tip?.shape !== "point") throw new Error("a comb has round pins");
  const pose = { along: 0, height: 0, tilt: 0 };
  const pins = Array.from({ length: PINS }, (_, n): Pin => {
    const at = (n - (PINS - 1) / 2) * PITCH;
    return { at, height: touchPoint(heights, spot, pose, { ...tip, u: at, run: 0 })?.height ?? null };
  });
  const top = Math.max(...pins.map(({ height }) => height ?? Number.NEGATIVE_INFINITY));
  return pins.map(({ at, height }) => ({ at, height: height === null ? null : Math.max(height, top - PIN_RUN) }));
}
