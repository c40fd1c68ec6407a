import { z } from "zod";
import { DEFAULT_PAPER, marksSchema } from "../results";

/** Marks that each section has to reach, 0 to 100 with at most one decimal; each stands on its own. */
export const passMarksSchema = z.strictObject({ plate: marksSchema, fillet: marksSchema });
export type PassMarks = z.infer<typeof passMarksSchema>;

export const DEFAULT_PASS_MARKS: PassMarks = {
  plate: DEFAULT_PAPER.plate.passMark,
  fillet: DEFAULT_PAPER.fillet.passMark,
};

/** The workshop's name, 1 to 60 characters after trimming. */
export const workshopNameSchema = z
  .string()
  .trim()
  .min(1, "Give the workshop a name.")
  .max(60, "Keep the name under 60 characters.");

/** What the tutor decides for everybody. */
export const workshopSettingsSchema = z.strictObject({
  name: workshopNameSchema,
  /** Learners may make their own accounts. */
  allowsOwnAccounts: z.boolean(),
  /** Offered when a practice is started. */
  passMarks: passMarksSchema,
});
export type WorkshopSettings = z.infer<typeof workshopSettingsSchema>;
