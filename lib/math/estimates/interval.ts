/** An interval with both ends; the confidence is that of whoever made it. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}

/** Confidence of every interval that nobody asked otherwise of. */
export const CONFIDENCE = 0.95;
