import type { Mm } from "../../math";
import { heightsOfWeld, type LargestWork, lineOf } from "./work";

/** The weld is searched between these places: a gauge three mm thick keeps clear of its ends. */
export const SEARCHED = { from: 3, to: 147 } as const;
/** Distance of the places at which the line is kept, mm. */
export const STEP: Mm = 0.5;

/** A place along the weld and what was measured there, mm. */
export interface Measured {
  readonly at: Mm;
  readonly value: Mm;
}

/** What is sought, measured on the finished metal over the plate, mm: highest or deepest near its line, every STEP along the weld. */
export function profileOf(work: LargestWork): readonly Measured[] {
  const heights = heightsOfWeld(work);
  const line = lineOf(work);
  const sense = work.sought === "cap" ? 1 : -1;
  const places = Math.round((SEARCHED.to - SEARCHED.from) / STEP) + 1;
  return Array.from({ length: places }, (_, n): Measured => {
    const at = SEARCHED.from + n * STEP;
    let value = Number.NEGATIVE_INFINITY;
    for (let x = at - STEP / 2; x <= at + STEP / 2 + 1e-9; x += STEP / 10) {
      for (let aside = -0.6; aside <= 0.6001; aside += 0.05) {
        value = Math.max(value, sense * heights.heightAt(x, line + aside));
      }
    }
    return { at, value };
  });
}

export const largestOf = (profile: readonly Measured[]): Measured =>
  profile.reduce((best, one) => (one.value > best.value ? one : best));

/**
 * The least of the largest values that somebody may come home with who measures every `spacing` mm, wherever the first
 * place is: what coarse sampling overlooks.
 */
export function leastFound(profile: readonly Measured[], spacing: Mm): Mm {
  const stride = Math.max(1, Math.round(spacing / STEP));
  let least = Number.POSITIVE_INFINITY;
  for (let first = 0; first < stride; first++) {
    let found = Number.NEGATIVE_INFINITY;
    for (let n = first; n < profile.length; n += stride) found = Math.max(found, profile[n].value);
    least = Math.min(least, found);
  }
  return least;
}

/** How long the stretch round the largest is in which no more than `less` mm are missing, mm. */
export function lengthOfPeak(profile: readonly Measured[], less: Mm): Mm {
  const { at, value } = largestOf(profile);
  const middle = profile.findIndex((one) => one.at === at);
  const isHigh = (n: number) => n >= 0 && n < profile.length && profile[n].value >= value - less;
  let [from, to] = [middle, middle];
  while (isHigh(from - 1)) from--;
  while (isHigh(to + 1)) to++;
  return (to - from) * STEP;
}

/** What a gauge set down at a place has under it: the value kept nearest to it. */
export function valueAt(profile: readonly Measured[], at: Mm): Mm {
  const n = Math.round((at - SEARCHED.from) / STEP);
  return profile[Math.min(profile.length - 1, Math.max(0, n))].value;
}
