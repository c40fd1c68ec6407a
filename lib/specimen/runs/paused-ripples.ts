import { clamp, mix } from "../../math";
import type { RandomStream } from "../../random";
import type { Range } from "./process-style";
import { indexOf, type Ripple, STEP } from "./ripple-table";

/** Length welded between two pauses of the hand, mm: irregular ripples and ripples like stacked coins. */
const APART: { readonly nervous: Range; readonly coins: Range } = { nervous: [14, 64], coins: [24, 95] };
/** How much higher a paused ripple is, and how often a second one follows it. */
const SWOLLEN: Range = [1.25, 2.1];
const TWICE = 0.35;
/** Depth of the crease in ripple heights where it is deepest, its half width in mm, how much darker it is. */
const DEPTH: Range = [0.7, 2.6];
const HALF: Range = [0.08, 0.16];
const DARKER: Range = [0.4, 2.2];
/** The crease in the table of forks is so much of the other one: across the run it comes and goes with them. */
const FORKED: Range = [-0.15, 0.55];
/** Share of pauses that leave a swollen ripple and no crease deeper than the others. */
const SHALLOW = 0.3;

/** A crease deeper than those round it; place and half width in mm of travel, depth in ripple heights. */
export interface Crease {
  readonly at: number;
  readonly half: number;
  /** In the table of heights and in that of forks. */
  readonly depths: readonly [number, number];
  readonly darker: number;
}

/** Where the hand paused: one or two ripples swell, and the crease at their edge is deeper and darker than others. */
export function pauseSometimes(
  random: RandomStream,
  ripples: readonly Ripple[],
  evenness: number,
): { ripples: Ripple[]; creases: Crease[] } {
  const creases: Crease[] = [];
  const apart = () =>
    random.uniform(mix(APART.nervous[0], APART.coins[0], evenness), mix(APART.nervous[1], APART.coins[1], evenness));
  let next = (ripples[0]?.from ?? 0) + apart();
  let more = 0;
  const paused = ripples.map((ripple) => {
    if (more === 0 && ripple.from < next) return ripple;
    more = more > 0 ? more - 1 : random.chance(TWICE) ? 1 : 0;
    if (more === 0) next = ripple.from + apart();
    if (!random.chance(SHALLOW)) {
      const depth = random.uniform(...DEPTH);
      const forked = depth * random.uniform(...FORKED);
      creases.push({
        at: ripple.from + ripple.length,
        half: random.uniform(...HALF),
        depths: random.chance(0.5) ? [depth, forked] : [forked, depth],
        darker: random.uniform(...DARKER),
      });
    }
    const swollen = random.uniform(...SWOLLEN);
    return { ...ripple, amplitude: Math.min(3, swollen * ripple.amplitude), reach: ripple.reach + swollen };
  });
  return { ripples: paused, creases };
}

/** Cuts creases into tables of heights, and darkens the table of lightness there. */
export function deepen(
  heights: readonly [Float32Array, Float32Array],
  tint: Float32Array,
  start: number,
  creases: readonly Crease[],
): void {
  for (const { at, half, depths, darker } of creases) {
    const reach = 3 * half;
    const last = indexOf(at + reach, start, tint.length);
    for (let i = indexOf(at - reach, start, tint.length); i <= last; i++) {
      const off = (start + i * STEP - at) / half;
      const share = clamp(Math.exp(-off * off), 0, 1);
      heights[0][i] -= depths[0] * share;
      heights[1][i] -= depths[1] * share;
      tint[i] -= darker * Math.exp(-((off / 1.6) ** 2));
    }
  }
}
