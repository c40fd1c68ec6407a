import { z } from "zod";
import { SURFACE_FACES } from "../weld";

const choice = z.int().min(0).max(3);

/** One question with four answers: what was chosen, which one is right and why, and what it earned. */
export const questionLineSchema = z.strictObject({
  question: z.string().min(1),
  kind: z.string().min(1),
  stem: z.string().min(1),
  options: z.array(z.string().min(1)).length(4),
  /** Positions among the options. */
  key: choice,
  written: choice.nullable(),
  explanation: z.string(),
  /** Where on the piece it is about, mm; null where it is about no place. */
  place: z.strictObject({ face: z.enum(SURFACE_FACES), start: z.number(), end: z.number() }).nullable(),
  /** Thousandths of a mark. */
  worth: z.int().min(0),
  earned: z.int().min(0),
});
export type QuestionLine = z.infer<typeof questionLineSchema>;

/** A question as it is put to a learner: nothing that tells its kind, its key or its place. */
export interface AskedQuestion {
  readonly id: string;
  readonly stem: string;
  readonly options: readonly [string, string, string, string];
}
