/**
 * Shares a whole number out in proportion to weights so that the parts add up to it exactly: every part is rounded
 * down and the units left over go to the largest remainders, earlier ones first (largest-remainder method). Weights
 * are whole numbers, 0 or more; all zero only for a total of 0.
 */
export function apportion(total: number, weights: readonly number[]): number[] {
  const sum = weights.reduce((a, b) => a + b, 0);
  if (total === 0) return weights.map(() => 0);
  if (sum === 0) throw new Error(`nothing to share ${total} out to`);
  const parts = weights.map((weight) => Math.floor((total * weight) / sum));
  const remainder = (i: number) => (total * weights[i]) % sum;
  const order = weights.map((_, i) => i).sort((i, j) => remainder(j) - remainder(i) || i - j);
  const left = total - parts.reduce((a, b) => a + b, 0);
  for (const i of order.slice(0, left)) parts[i] += 1;
  return parts;
}
