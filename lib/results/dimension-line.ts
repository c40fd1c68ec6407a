import { z } from "zod";
import { DIMENSIONS, STATEMENT_ANSWERS, STATEMENTS } from "../weld";

/** One dimension: what was written, what is true, and what it earned. Values in the dimension's own unit, places in mm. */
export const dimensionLineSchema = z.strictObject({
  dimension: z.enum(DIMENSIONS),
  /** Where it was asked for, 1 at the datum end; null where the whole weld is meant. */
  station: z.int().min(1).nullable(),
  written: z.number().nullable(),
  /** Where it was measured, if that was written. */
  writtenAt: z.number().nullable(),
  actual: z.number(),
  /** Where the largest or the least is; null where it is the same everywhere. */
  actualAt: z.number().nullable(),
  /** What it is where it was measured; null where nobody wrote where, or it is the same everywhere. */
  actualThere: z.number().nullable(),
  /** Never negative; null where nothing was written. */
  error: z.number().min(0).nullable(),
  tolerance: z.number(),
  nothingFrom: z.number(),
  /** Thousandths of a mark. */
  worth: z.int().min(0),
  earned: z.int().min(0),
});
export type DimensionLine = z.infer<typeof dimensionLineSchema>;

const answer = z.enum(Object.values(STATEMENT_ANSWERS).flat());

/** One statement: what was stated, which answers are right, and what it earned: all of its worth or nothing. */
export const statementLineSchema = z.strictObject({
  statement: z.enum(STATEMENTS),
  written: answer.nullable(),
  /** One, or two where the measured value lies too near their limit to tell them apart. */
  right: z.array(answer).min(1).readonly(),
  /** What decides, mm, and the limit between the answers that it is held against. */
  value: z.number(),
  limit: z.number(),
  /** Thousandths of a mark. */
  worth: z.int().min(0),
  earned: z.int().min(0),
});
export type StatementLine = z.infer<typeof statementLineSchema>;
