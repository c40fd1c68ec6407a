import { z } from "zod";
import { text, whole } from "./field-errors";

const FACTOR = "factor: 1 to 5 with at most two decimals, for example 1.25";
/** Extra time as it is usually given; any other from 1 to 5 is as good. Common practice, no source. */
export const USUAL_FACTORS = [1, 1.25, 1.5, 2] as const;

/** A learner's extra time: what the paper's minutes are multiplied by. */
export const factorSchema = z
  .number({ error: FACTOR })
  .min(1, FACTOR)
  .max(5, FACTOR)
  .refine((factor) => Math.abs(factor * 100 - Math.round(factor * 100)) < 1e-9, { error: FACTOR });

const reason = text("reason", 200);

/** What a tutor fills in to give minutes on top, to open a section again, to change extra time, and to void something. */
export const addTimeSchema = z.strictObject({ minutes: whole("minutes", 1, 240), reason });
export const reopenSchema = z.strictObject({ minutes: whole("minutes", 1, 240), reason });
export const changeFactorSchema = z.strictObject({ factor: factorSchema, reason });
export const voidSchema = z.strictObject({ reason });
