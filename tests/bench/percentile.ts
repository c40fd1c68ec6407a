/** Value below which the share lies, rounded: percentile([1, 2, 3], 0.5) = 2. */
export function percentile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return Math.round(sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]);
}
