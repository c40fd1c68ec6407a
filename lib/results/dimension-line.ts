import { z } from "zod";
import { DIMENSIONS } from "../weld";

/** One dimension: what was written, what is true, and what it earned. Values in the dimension's own unit, places in mm. */
export const dimensionLineSchema = z.strictObject({
  dimension: z.enum(DIMENSIONS),
  written: z.number().nullable(),
  /** Where it was measured, if that was written. */
  writtenAt: z.number().nullable(),
  actual: z.number(),
  /** Where the largest is; null where it is the same everywhere. */
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
