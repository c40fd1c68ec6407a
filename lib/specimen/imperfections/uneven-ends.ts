import { ease } from "../../math";
import type { RandomStream } from "../../random";
import { gradient1 } from "../../surface";

/** Share of an imperfection's full size at x mm: 0 outside its ends, 1 inside. */
export type Envelope = (x: number) => number;

export interface EndLengths {
  /** Length over which it grows at the datum's end and fades at the far end, mm. */
  readonly first: number;
  readonly last: number;
}

/** Draws one short and one long end, in either order; together never longer than 0.8 of the length. */
export function drawEnds(
  random: RandomStream,
  length: number,
  short: readonly [number, number],
  long: readonly [number, number],
): EndLengths {
  const a = Math.min(random.uniform(...short), 0.3 * length);
  const b = Math.min(random.uniform(...long), 0.5 * length);
  return random.chance(0.5) ? { first: a, last: b } : { first: b, last: a };
}

/**
 * Envelope from `from` to `to` mm that grows and fades over the given ends. `waver` mm of noise shifts the place that is
 * looked up, so that an end advances and falls back instead of following one smooth curve.
 */
export function unevenEnvelope(from: number, to: number, ends: EndLengths, waver: number, seed: number): Envelope {
  return (x) => {
    const looked = x + waver * (gradient1(x / 2.9, seed) + 0.3 * gradient1(x / 1.1, seed + 1));
    return ease(from, from + ends.first, looked) * ease(to, to - ends.last, looked);
  };
}

/** Largest value of a function along a stretch, looked up every 0.1 mm: what a profile is divided by to reach what was asked. */
export function largestAlong(from: number, to: number, value: (x: number) => number): number {
  let most = 0;
  for (let x = from; x <= to; x += 0.1) most = Math.max(most, value(x));
  return most;
}

/** A profile that keeps what it has worked out: every row of pixels asks for the same places again. */
function remembered(value: (x: number) => number): (x: number) => number {
  const known = new Map<number, number>();
  return (x) => {
    const kept = known.get(x);
    if (kept !== undefined) return kept;
    const found = value(x);
    known.set(x, found);
    return found;
  };
}

/** A profile evened out over `reach` mm to both sides: a pool does not follow what is shorter than itself. */
export function evenedOut(value: (x: number) => number, reach: number): (x: number) => number {
  const steps = 6;
  return remembered((x) => {
    let sum = 0;
    let weights = 0;
    for (let n = -steps; n <= steps; n++) {
      const weight = 1 - Math.abs(n) / (steps + 1);
      sum += weight * value(x + (n * reach) / steps);
      weights += weight;
    }
    return sum / weights;
  });
}
