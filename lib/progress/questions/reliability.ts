/** How far the parts of a test measure one thing. */
export interface Reliability {
  readonly learners: number;
  readonly parts: number;
  /** Cronbach's alpha; of parts that are right or wrong it is Kuder and Richardson's formula 20. Null where the totals never vary. */
  readonly alpha: number | null;
  readonly mean: number;
  /** Standard deviation of the totals. */
  readonly deviation: number;
  /** Standard error of measurement: deviation x sqrt(1 - alpha), in the unit of the totals; null without alpha. */
  readonly sem: number | null;
}

const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);

/** Variance over all of them, not estimated from a sample. */
function varianceOf(values: readonly number[]): number {
  const mean = sumOf(values) / values.length;
  return sumOf(values.map((value) => (value - mean) ** 2)) / values.length;
}

/**
 * Cronbach's alpha (L. J. Cronbach, Psychometrika 16, 1951) of a table of scores, learners by parts, with at least two of each. With
 * scores of 0 and 1 it is KR-20 (G. F. Kuder and M. W. Richardson, Psychometrika 2, 1937). Variances are those of the whole group on
 * both sides; of samples on both sides alpha is the same.
 */
export function reliabilityOf(scores: readonly (readonly number[])[]): Reliability {
  const totals = scores.map(sumOf);
  const parts = scores[0].length;
  const ofTotals = varianceOf(totals);
  const ofParts = sumOf(Array.from({ length: parts }, (_, part) => varianceOf(scores.map((row) => row[part]))));
  const alpha = ofTotals < 1e-12 ? null : (parts / (parts - 1)) * (1 - ofParts / ofTotals);
  const deviation = Math.sqrt(ofTotals);
  return {
    learners: scores.length,
    parts,
    alpha,
    mean: sumOf(totals) / totals.length,
    deviation,
    // an alpha below 0 says nothing of the error, which is then no larger than the scatter of the totals
    sem: alpha === null ? null : deviation * Math.sqrt(1 - Math.max(0, alpha)),
  };
}
