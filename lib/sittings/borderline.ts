/** So many standard errors below the pass mark still count as "may well be able": 95 % one-sided of a normal distribution. */
const STANDARD_ERRORS = 1.64;

/**
 * Whether a failed section is so near its pass mark that a parallel piece decides, where the paper has that: from 1.64
 * standard errors of measurement below the pass mark up to it. `mark` as shown, `standardError` of it in marks.
 */
export function isBorderline(mark: number, passMark: number, standardError: number): boolean {
  const short = passMark - mark;
  return short > 0 && short <= STANDARD_ERRORS * standardError + 1e-9;
}

/** Mean of two marks as shown, to one decimal, half upwards; the section is decided on it. */
export function averagedMark(first: number, second: number): number {
  const tenths = Math.round(first * 10) + Math.round(second * 10);
  return Math.floor((tenths + 1) / 2) / 10;
}
