import { z } from "zod";

/** Count, sum and sum of squares of differences in whole thousandths, so that adding up in any order gives the same. */
export const momentsSchema = z.strictObject({ n: z.int().min(0), sum: z.int(), sumOfSquares: z.int().min(0) });
export type Moments = z.infer<typeof momentsSchema>;

export const NO_MOMENTS: Moments = { n: 0, sum: 0, sumOfSquares: 0 };

/** With one difference more, mm or degrees; null adds nothing. */
export function addDifference({ n, sum, sumOfSquares }: Moments, difference: number | null): Moments {
  if (difference === null) return { n, sum, sumOfSquares };
  const thousandths = Math.round(1000 * difference);
  return { n: n + 1, sum: sum + thousandths, sumOfSquares: sumOfSquares + thousandths ** 2 };
}

export const addMoments = (a: Moments, b: Moments): Moments => ({
  n: a.n + b.n,
  sum: a.sum + b.sum,
  sumOfSquares: a.sumOfSquares + b.sumOfSquares,
});
