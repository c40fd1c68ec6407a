import { z } from "zod";
import type { Dimension } from "../weld";

/**
 * One tolerance: full marks up to T = max(full mm, share x reference), nothing from `none` x T on, a straight line
 * between. The reference is the true length for places along the weld and the true size for sizes.
 */
export const toleranceSchema = z.strictObject({
  /** mm */
  full: z.number().positive().max(100),
  /** 0..1 */
  share: z.number().min(0).max(1),
  /** Greater than 1. */
  none: z.number().gt(1).max(20),
});
export type Tolerance = z.infer<typeof toleranceSchema>;

/** All tolerances of a paper. */
export const tolerancesSchema = z.strictObject({
  /** How far a call may stick out of the truth along the weld to be in its place. */
  placeAlong: toleranceSchema,
  /** How far it may lie beside the truth to be in its place. */
  placeAcross: toleranceSchema,
  start: toleranceSchema,
  end: toleranceSchema,
  size: toleranceSchema,
  across: toleranceSchema,
  /** Gap between the pieces of a split call, or between truths under a merged one. */
  gap: toleranceSchema,
});
export type Tolerances = z.infer<typeof tolerancesSchema>;

/** How far a size may be misread by careful hands, mm: the measuring uncertainty in the tolerance of sizes. Common practice, no source. */
export const SIZE_UNCERTAINTY = 0.25;

/**
 * Position 3 + 2 = 5 mm and size 0.25 + 0.25 = 0.5 mm: what the job needs plus measuring uncertainty, by the logic of
 * ISO 14253-1 (who proves another wrong bears the uncertainty). The values are common practice, no source.
 */
export const DEFAULT_TOLERANCES: Tolerances = {
  placeAlong: { full: 8, share: 0.15, none: 2.5 },
  placeAcross: { full: 3, share: 0, none: 8 / 3 },
  start: { full: 5, share: 0.1, none: 3 },
  end: { full: 5, share: 0.1, none: 3 },
  size: { full: 0.25 + SIZE_UNCERTAINTY, share: 0.15, none: 3 },
  across: { full: 2, share: 0, none: 3 },
  gap: { full: 5, share: 0, none: 3 },
};

/** How far each dimension may be off to earn in full, in its own unit; nothing from twice that on. */
export type DimensionTolerances = Readonly<Record<Dimension, number>>;

/** What the gauge for it reads to, how it sits, and what the job needs; common practice, no source. */
export const DEFAULT_DIMENSION_TOLERANCES: DimensionTolerances = {
  "plate-thickness": 0.2,
  "weld-width": 1,
  "cap-height": 0.5,
  "root-height": 0.5,
  "linear-misalignment": 0.5,
  "angular-misalignment": 1,
  "base-leg": 0.5,
  "standing-leg": 0.5,
  throat: 0.5,
  "smallest-leg": 0.5,
  "smallest-throat": 0.5,
};
