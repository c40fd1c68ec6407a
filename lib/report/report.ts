import { z } from "zod";
import { IMPERFECTION_TYPES, type ImperfectionType } from "../imperfections";
import { BUTT_PLATE_LENGTH, BUTT_PLATE_WIDTH, DIMENSION_FACTS, DIMENSIONS, FACES } from "../weld";

export const MAX_CALLS = 200;

const along = z.number().min(0).max(BUTT_PLATE_LENGTH);

/** One indication as the learner wrote it. Empty fields are null; for a point, `end` is null or equal to `start`. */
export const callSchema = z.strictObject({
  id: z.string().regex(/^[a-z0-9-]{1,40}$/),
  face: z.enum(FACES),
  type: z.enum(IMPERFECTION_TYPES as readonly [ImperfectionType, ...ImperfectionType[]]).nullable(),
  /** mm from the datum. */
  start: along.nullable(),
  end: along.nullable(),
  /** mm from the weld's centre line, positive towards plate A. */
  across: z
    .number()
    .min(-BUTT_PLATE_WIDTH / 2)
    .max(BUTT_PLATE_WIDTH / 2)
    .nullable(),
  /** Depth, height or diameter in mm. */
  size: z.number().min(0).max(50).nullable(),
});
export type Call = z.infer<typeof callSchema>;

/** One dimension as the learner measured it; null where nothing is written yet. */
export const measureSchema = z
  .strictObject({
    dimension: z.enum(DIMENSIONS),
    /** mm or degrees, as the dimension says. */
    value: z.number().min(0).nullable(),
    /** Where along the weld it was measured, mm from the datum. */
    at: along.nullable(),
  })
  .superRefine(({ dimension, value }, context) => {
    const { most, unit } = DIMENSION_FACTS[dimension];
    if (value !== null && value > most) {
      context.addIssue({ code: "custom", path: ["value"], message: `at most ${most} ${unit}` });
    }
  });
export type Measure = z.infer<typeof measureSchema>;

const isUnique = (keys: readonly string[]): boolean => new Set(keys).size === keys.length;

/** The report on both faces of a butt plate, complete or not. Reports written before dimensions were asked have none. */
export const reportSchema = z
  .strictObject({
    version: z.literal(1),
    calls: z.array(callSchema).max(MAX_CALLS),
    measures: z.array(measureSchema).max(DIMENSIONS.length).default([]),
  })
  .refine((report) => isUnique(report.calls.map((call) => call.id)), {
    error: "calls: every id must be different",
    path: ["calls"],
  })
  .refine((report) => isUnique(report.measures.map((measure) => measure.dimension)), {
    error: "measures: every dimension stands there once at most",
    path: ["measures"],
  });
export type Report = z.infer<typeof reportSchema>;

export const EMPTY_REPORT: Report = { version: 1, calls: [], measures: [] };
