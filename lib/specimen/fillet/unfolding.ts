import { ease, mix, tabulate } from "../../math";
import { boxBlur } from "../../surface";
import type { FacePlan } from "../plan";
import { outerRun } from "../runs/edit";

/**
 * A fillet is welded and painted laid out flat: plate, straight line from toe to toe, plate. There y = 0 lies near the middle
 * of the weld, y > 0 towards the standing plate, and heights are square to whatever lies below. All lines have a value per
 * column of the strip, mm.
 */
export interface Unfolding {
  /** From the root corner to where each plate's toe was planned, evened out along the weld. */
  readonly baseLeg: Float32Array;
  readonly standingLeg: Float32Array;
  /** y of the same two toes laid out flat. */
  readonly baseToe: Float32Array;
  readonly standingToe: Float32Array;
}

/** The toes are evened out over this half length before the plates are folded about them: plates do not follow ripples, mm. */
const EVENED = 2;

/** The two legs whose toes lie at these places of a joint laid out flat: b - s = -(low + high), b^2 + s^2 = (high - low)^2. */
export function legsBetween(low: number, high: number): { base: number; standing: number } {
  const middle = (low + high) / 2;
  const half = Math.sqrt(Math.max(0, (high - low) ** 2 / 2 - middle ** 2));
  return { base: half - middle, standing: half + middle };
}

/** Where the plates will be folded about a weld as planned. */
export function unfoldingOf(plan: FacePlan, perMm: number): Unfolding {
  const evened = (side: 1 | -1) => {
    const { centre, halfWidth } = outerRun(plan, side);
    const toe = tabulate(centre.length, (i) => centre[i] + side * halfWidth[i]);
    return boxBlur(toe, toe.length, 1, EVENED * perMm, 0, 3);
  };
  const baseToe = evened(-1);
  const standingToe = evened(1);
  const baseLeg = new Float32Array(baseToe.length);
  const standingLeg = new Float32Array(baseToe.length);
  for (let i = 0; i < baseToe.length; i++) {
    const { base, standing } = legsBetween(baseToe[i], standingToe[i]);
    baseLeg[i] = base;
    standingLeg[i] = standing;
  }
  return { baseLeg, standingLeg, baseToe, standingToe };
}

/** Heights square to the weld's face pass into heights square to a plate over this length inside the toe, mm. */
const TURNING = 0.8;

/** A place across the folded joint. */
export interface FoldedPlace {
  /** Where it lies on the joint laid out flat, mm. */
  readonly y: number;
  /** Height over the root corner along the line between the plates, mm, where the laid-out height is 0. */
  readonly level: number;
  /** What a laid-out height of 1 mm raises it by. */
  readonly rise: number;
}

/** Place v mm across the line between the plates (positive towards the base plate) in column i. */
export function foldedPlace(unfolding: Unfolding, i: number, v: number): FoldedPlace {
  const b = unfolding.baseLeg[i];
  const s = unfolding.standingLeg[i];
  const low = unfolding.baseToe[i];
  const high = unfolding.standingToe[i];
  const out = Math.SQRT2 * Math.abs(v);
  if (v < 0 && out >= s) return { y: high + out - s, level: -v, rise: Math.SQRT2 };
  if (v >= 0 && out >= b) return { y: low - out + b, level: v, rise: Math.SQRT2 };
  // 0 at the standing toe, 1 at the base toe
  const t = (Math.SQRT2 * v + s) / (b + s);
  const y = mix(high, low, t);
  const tilted = Math.sqrt(1 + ((b - s) / (b + s)) ** 2);
  const inside = Math.min(high - y, y - low);
  return { y, level: mix(s, b, t) / Math.SQRT2, rise: mix(Math.SQRT2, tilted, ease(0, TURNING, inside)) };
}

/** Where y mm on the joint laid out flat comes to lie across the folded one, mm; at the height of what lies below. */
export function foldedAcross(unfolding: Unfolding, i: number, y: number): number {
  const b = unfolding.baseLeg[i];
  const s = unfolding.standingLeg[i];
  const low = unfolding.baseToe[i];
  const high = unfolding.standingToe[i];
  if (y >= high) return -(s + y - high) / Math.SQRT2;
  if (y <= low) return (b + low - y) / Math.SQRT2;
  return mix(-s, b, (high - y) / (high - low)) / Math.SQRT2;
}

/** Laid-out height of the bare corner between the plates at y, mm: 0 on the plates, negative where weld metal belongs. */
export function cornerHeight(unfolding: Unfolding, i: number, y: number): number {
  const v = foldedAcross(unfolding, i, y);
  const { level, rise } = foldedPlace(unfolding, i, v);
  return (Math.abs(v) - level) / rise;
}
