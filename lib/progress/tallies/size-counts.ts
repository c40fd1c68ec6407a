import { z } from "zod";
import { mergeBy } from "./counts";

const count = z.int().min(0);

/** Imperfections by size in steps of a tenth of an e-fold (10.5 %): the step's number, how many there were and were found. */
export const sizeCountsSchema = z.record(
  z.string().regex(/^(0|-?[1-9][0-9]?)$/),
  z.strictObject({ total: count, found: count }),
);
export type SizeCounts = z.infer<typeof sizeCountsSchema>;

/** Steps of the natural logarithm; rounding to them shifts a fitted slope by far less than its own uncertainty. */
const STEP = 0.1;

const stepOf = (size: number): string => String(Math.round(Math.log(size) / STEP) + 0);

/** mm in the middle of a step. */
export const sizeOfStep = (step: string): number => Math.exp(Number(step) * STEP);

/** With one imperfection of a size, mm, more. */
export const countSize = (counts: SizeCounts, size: number, found: boolean): SizeCounts =>
  addSizeCounts(counts, { [stepOf(size)]: { total: 1, found: Number(found) } });

export const addSizeCounts = (a: SizeCounts, b: SizeCounts): SizeCounts =>
  mergeBy(a, b, (one, other) => ({ total: one.total + other.total, found: one.found + other.found })) as SizeCounts;
