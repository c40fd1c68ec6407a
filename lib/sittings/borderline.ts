import type { PartWeights, Section } from "../results";

/**
 * Standard error of the marks for indications, in marks of 100, of somebody who just passes: what `expectPiece` of lib/specimen
 * says of drawn pieces on the mean, of a plate's assessment blueprint and of a fillet for practice; a test holds them against it.
 */
const OF_INDICATIONS: Readonly<Record<Section, number>> = { plate: 11.3, fillet: 15.2 };

/**
 * Standard error of a section's mark about its pass mark, in marks, by how much its indications weigh. Dimensions, sentences
 * and questions have no model yet and count as free of chance, so the true error is larger.
 */
export function standardErrorOf(section: Section, weights: PartWeights): number {
  const whole = Object.values(weights).reduce((sum, weight) => sum + weight, 0);
  return (OF_INDICATIONS[section] * weights.indications) / whole;
}

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
