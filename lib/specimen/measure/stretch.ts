/** First and last index of a stretch, both included. */
export interface Stretch {
  readonly first: number;
  readonly last: number;
}

/**
 * The longest stretch of true flags in which gaps of at most `bridge` false flags are passed over; it begins and ends
 * with a true one. The earlier of two equal ones; null if all are false.
 */
export function longestStretch(flags: readonly boolean[], bridge: number): Stretch | null {
  let longest: Stretch | null = null;
  let first = -1;
  let last = -1;
  for (let i = 0; i < flags.length; i++) {
    if (!flags[i]) continue;
    if (first < 0 || i - last - 1 > bridge) first = i;
    last = i;
    if (!longest || last - first > longest.last - longest.first) longest = { first, last };
  }
  return longest;
}
