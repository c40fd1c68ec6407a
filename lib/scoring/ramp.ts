import type { Tolerance } from "../results";

/** One tolerance made ready: whole micrometres for one truth. */
export interface Ramp {
  /** Full marks up to here, µm. */
  readonly full: number;
  /** Nothing from here on, µm. */
  readonly none: number;
}

/** Millimetres to whole micrometres, without a minus before zero. */
export const toMicrometres = (mm: number): number => Math.round(mm * 1000) + 0;

/** The ramp of a tolerance for a truth whose length or size is `reference` µm. */
export function rampFor(tolerance: Tolerance, reference: number): Ramp {
  const full = Math.max(toMicrometres(tolerance.full), Math.round(tolerance.share * reference));
  return { full, none: Math.round(full * tolerance.none) };
}

/** Thousandths earned at an error in µm: 1000 up to the tolerance, then a straight line to 0. Never rises with the error. */
export function earnedShare(ramp: Ramp, error: number): number {
  if (error <= ramp.full) return 1000;
  if (error >= ramp.none) return 0;
  return Math.round((1000 * (ramp.none - error)) / (ramp.none - ramp.full));
}
