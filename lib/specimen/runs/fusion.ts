import { ease, mix } from "../../math";
import { gradient1 } from "../../surface";
import type { Segment } from "../plan";
import type { Pool } from "./pool";

/** Edge exponents between which an edge passes from wetted out to rolled over: at once, it would leave a notch in the toe. */
const ROLLED_EXPONENT = { from: 2.6, to: 5.2 };
/** Where across the run (1 = toe) the metal begins to merge into what it lies on: later at a rolled edge. */
const MERGES = { wetted: 0.9, rolled: 0.975 };
/** Nearer to the middle than this all of the metal's height counts, whatever the edge. */
export const MERGING = MERGES.wetted;
/** Beyond this place across there is no metal of the run. */
export const MERGED = 1.02;

/** How much of the pool's own height counts at s across (1 = toe): all inside, less where it merges into the old surface. */
export function toeFusion(s: number, exponent: number): number {
  if (s < MERGING) return 1;
  const merges = mix(MERGES.wetted, MERGES.rolled, ease(ROLLED_EXPONENT.from, ROLLED_EXPONENT.to, exponent));
  return s < merges ? 1 : 1 - ease(merges, MERGED, s);
}

/** The rounded front merges within its last few tenths. */
export function frontFusion(pool: Pool, travel: number, far: number, planned: number): number {
  const along = (travel - pool.front) / pool.frontRadius;
  const roundness = Math.max(0.05, Math.sqrt(Math.max(0, 1 - along * along)));
  const aside = (far * roundness) / planned;
  const r = Math.sqrt(along * along + aside * aside);
  return 1 - ease(0.92, 1, r);
}

/** How far a restart's ragged and perhaps slanting rear edge lies ahead of its arc at y, mm; `across` -1 one toe .. 1 the other. */
export function lapAt({ lapSeed = 0, lapSlant = 0, lapRagged = 1 }: Lap, y: number, across: number): number {
  const slow = 0.32 * gradient1(y / 2.1, lapSeed) + 0.55 * (lapRagged - 1) * gradient1(y / 3.7, lapSeed + 3);
  const wide = 0.6 * gradient1(y / 5.3, lapSeed + 5);
  return lapRagged * (slow + wide + 0.08 * gradient1(y / 0.7, lapSeed + 1)) + lapSlant * across;
}

type Lap = Pick<Segment, "lapSeed" | "lapSlant" | "lapRagged">;

/** A restart wets back over the old metal: nothing at its ragged rear edge, full a little further on. `across` -1 .. 1. */
export function rearFusion(pool: Pool, segment: Segment, travel: number, y: number, across: number): number {
  const rear = pool.start - pool.rearRadius * Math.sqrt(Math.max(0, 1 - 0.9 * across * across));
  const gone = travel - rear;
  if (segment.lapSeed === undefined) return ease(-0.2, segment.wetting + 0.5 * pool.rearRadius, gone);
  return ease(-0.08, Math.max(0.3, segment.wetting), gone - lapAt(segment, y, across));
}
