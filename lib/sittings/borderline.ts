import type { Section } from "../results";

/**
 * Standard error of measurement of a section's mark about its pass mark, in marks. Of a plate: twelve indications found with
 * a chance of 0.75 are found 100 sqrt(0.75 x 0.25 / 12) = 12.5 in a hundred more or less often, and carry 60 of 100 marks, so
 * 7 or 8. Of a fillet, whose marks lie in dimensions for the most part, there is no such sum. Common practice, no source.
 */
export const STANDARD_ERRORS: Readonly<Record<Section, number>> = { plate: 7.5, fillet: 5 };

/** So many standard errors below the pass mark still count as "may well be able": 95 % one-sided of a normal distribution. */
const ERRORS_BELOW = 1.64;

/**
 * Whether a failed section is so near its pass mark that a parallel piece decides, where the paper has that: from 1.64
 * standard errors of measurement below the pass mark up to it. `mark` as shown, `standardError` of it in marks.
 */
export function isBorderline(mark: number, passMark: number, standardError: number): boolean {
  const short = passMark - mark;
  return short > 0 && short <= ERRORS_BELOW * standardError + 1e-9;
}

/** Mean of two marks as shown, to one decimal, half upwards; the section is decided on it. */
export function averagedMark(first: number, second: number): number {
  const tenths = Math.round(first * 10) + Math.round(second * 10);
  return Math.floor((tenths + 1) / 2) / 10;
}
