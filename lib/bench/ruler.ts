import type { Mm } from "../math";

export interface Tick {
  readonly at: Mm;
  readonly kind: "long" | "middle" | "short";
}

/** Distance of ticks (mm) from the closest to the widest, and how many of them make a numbered one. */
const STEPS = [
  { short: 0.1, middle: 0.5, long: 1 },
  { short: 0.5, middle: 1, long: 5 },
  { short: 1, middle: 5, long: 10 },
  { short: 5, middle: 10, long: 50 },
  { short: 10, middle: 50, long: 100 },
] as const;

/** Ticks of a rule between two places, close enough to read and never closer than `closest` px. Long ticks carry numbers. */
export function ticksBetween(from: Mm, to: Mm, pxPerMm: number, closest = 5): readonly Tick[] {
  const step = STEPS.find(({ short }) => short * pxPerMm >= closest) ?? STEPS[STEPS.length - 1];
  const perMiddle = Math.round(step.middle / step.short);
  const perLong = Math.round(step.long / step.short);
  const ticks: Tick[] = [];
  for (let n = Math.ceil(from / step.short - 1e-9); n * step.short <= to + 1e-9; n++) {
    const kind = n % perLong === 0 ? "long" : n % perMiddle === 0 ? "middle" : "short";
    ticks.push({ at: Math.round(n * step.short * 10) / 10 + 0, kind });
  }
  return ticks;
}
