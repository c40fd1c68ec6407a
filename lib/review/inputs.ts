import { z } from "zod";
import { lineIdSchema } from "./lines";

const REASON = "reason: 1 to 300 characters";
const MARKS = "marks: a number from 0 to what the line is worth, at most three decimals";

/** Why; the learner reads it. */
export const reviewReason = z.string({ error: REASON }).trim().min(1, REASON).max(300, REASON);

/** What a tutor fills in to overrule a line. */
export const overruleInput = z.strictObject({
  line: lineIdSchema,
  marks: z
    .number({ error: MARKS })
    .min(0, MARKS)
    .max(100, MARKS)
    .refine((marks) => Math.abs(marks * 1000 - Math.round(marks * 1000)) < 1e-6, { error: MARKS }),
  reason: reviewReason,
});
export const takeBackInput = z.strictObject({
  act: z.int({ error: "act: the number of an act" }),
  reason: reviewReason,
});
/** What the preview said would change comes back with the act, so that nothing else is done than was looked at. */
const seen = z.strictObject({ marks: z.int().min(0), verdicts: z.int().min(0) });
export const annulInput = z.strictObject({ question: z.string().min(1).max(20), reason: reviewReason, seen });
export const questionInput = z.strictObject({ question: z.string().min(1).max(20) });
export const markAgainInput = z.strictObject({
  counts: z.boolean({ error: "counts: true where the new mark is to count, false where the first one is" }),
  /** Thousandths: what each choice would come to, as it was looked at. */
  seen: z.strictObject({ first: z.int().min(0).max(100_000), again: z.int().min(0).max(100_000) }),
  reason: reviewReason,
});

/**
 * Marks as typed, as thousandths within a line's range; null where they are beyond it. What a line is worth is shown rounded
 * to hundredths, so that number means all of it.
 */
export function marksWithin(marks: number, { least, most }: { readonly least: number; readonly most: number }) {
  const typed = Math.round(marks * 1000);
  if (typed === Math.round(most / 10) * 10) return most;
  return typed >= least && typed <= most ? typed : null;
}
