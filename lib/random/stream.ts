import seedrandom from "seedrandom";
import { keepWarm } from "../math";

/**
 * A named stream of random numbers. Every feature draws from its own child stream, so adding a feature
 * does not shift what the others draw.
 */
export interface RandomStream {
  /** Uniform in [low, high). */
  uniform(low: number, high: number): number;
  /** Normal with the given mean and standard deviation. */
  normal(mean: number, deviation: number): number;
  /** Log-normal around `median`; `sigma` is the standard deviation of the logarithm. */
  logNormal(median: number, sigma: number): number;
  /** Whole number 0 .. count - 1. */
  integer(count: number): number;
  /** True with the given probability. */
  chance(probability: number): boolean;
  pick<T>(items: readonly T[]): T;
  /** A 31-bit whole number, for seeding noise lattices. */
  seed(): number;
  /** A stream that depends on this one's name and the given name, never on what was drawn here. */
  child(name: string): RandomStream;
}

/** Stream for a seed: randomStream("abc").child("cap/undercut/2"). The same names give the same numbers everywhere. */
export function randomStream(name: string): RandomStream {
  // seedrandom repeats short keys cyclically, so that "ab" and "abab" would give one stream: end the name with a mark.
  const next = seedrandom(`${name}\u0000`);
  const uniform = (low: number, high: number) => low + (high - low) * next.quick();
  const normal = (mean: number, deviation: number) => {
    const radius = Math.sqrt(-2 * Math.log(1 - next.quick() * 0.999999));
    return mean + deviation * radius * Math.cos(2 * Math.PI * next.quick());
  };
  const integer = (count: number) => Math.floor(next.quick() * count);
  return keepWarm({
    uniform,
    normal,
    logNormal: (median, sigma) => median * Math.exp(normal(0, sigma)),
    integer,
    chance: (probability) => next.quick() < probability,
    pick: (items) => items[integer(items.length)] as (typeof items)[number],
    seed: () => Math.floor(next.quick() * 0x7fffffff),
    child: (childName) => randomStream(`${name}/${childName}`),
  });
}
