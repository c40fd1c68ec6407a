import { clamp, mix } from "../../math";
import type { RandomStream } from "../../random";
import type { Range } from "./process-style";
import { indexOf, type Ripple, STEP } from "./ripple-table";

/** Length welded between two pauses of the hand, mm: irregular ripples and ripples like stacked coins. */
const APART: { readonly nervous: Range; readonly coins: Range } = { nervous: [14, 64], coins: [24, 95] };
/** How much higher a paused ripple is, and how often a second one follows it. */
const SWOLLEN: Range = [1.1, 1.55];
const TWICE = 0.35;
/** Depth of the crease in ripple heights where it is deepest, its half width in mm, how much darker it is. */
const DEPTH: Range = [0.35, 0.95];
const HALF: Range = [0.16, 0.3];
const DARKER: Range = [0.15, 0.7];
/** The crease in the other of the two tables is so much of it: across the run it comes and goes with the forks. */
const FORKED: Range = [-0.3, 0.05];
/** Share of the pauses among which the one that left a crease is looked for: the hand had settled by then. */
const WITHIN: Range = [0.15, 0.85];

/** A crease deeper than those round it; place and half width in mm of travel, depth in ripple heights. */
export interface Crease {
  readonly at: number;
  readonly half: number;
  /** In the table of heights and in that of forks. */
  readonly depths: readonly [number, number];
  readonly darker: number;
}

/**
 * Where the hand paused: one or two ripples swell. With `isCreased` the edge of one of them is a crease somewhat deeper and
 * darker than others, rounded, over part of the run's width.
 */
export function pauseSometimes(
  random: RandomStream,
  ripples: readonly Ripple[],
  evenness: number,
  isCreased: boolean,
): { ripples: Ripple[]; creases: Crease[] } {
  const apart = () =>
    random.uniform(mix(APART.nervous[0], APART.coins[0], evenness), mix(APART.nervous[1], APART.coins[1], evenness));
  let next = (ripples[0]?.from ?? 0) + apart();
  let more = 0;
  const pauses: Ripple[] = [];
  const paused = ripples.map((ripple) => {
    if (more === 0 && ripple.from < next) return ripple;
    more = more > 0 ? more - 1 : random.chance(TWICE) ? 1 : 0;
    if (more === 0) next = ripple.from + apart();
    pauses.push(ripple);
    const swollen = random.uniform(...SWOLLEN);
    return { ...ripple, amplitude: Math.min(2.2, swollen * ripple.amplitude), reach: ripple.reach + swollen };
  });
  const creased = isCreased ? pauses[Math.floor(random.uniform(...WITHIN) * pauses.length)] : undefined;
  return { ripples: paused, creases: creased ? [creaseAfter(creased, random)] : [] };
}

function creaseAfter(ripple: Ripple, random: RandomStream): Crease {
  const depth = random.uniform(...DEPTH);
  const forked = depth * random.uniform(...FORKED);
  return {
    at: ripple.from + ripple.length,
    half: random.uniform(...HALF),
    depths: random.chance(0.5) ? [depth, forked] : [forked, depth],
    darker: random.uniform(...DARKER),
  };
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
