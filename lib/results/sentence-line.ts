import { z } from "zod";
import { OUTCOMES } from "../criteria";
import { SENTENCES } from "../report";

const sentence = z.enum(SENTENCES);

/** What the criteria say, with the numbers and the clause that decide. */
const ruledSchema = z.strictObject({ outcome: z.enum(OUTCOMES), text: z.string() });
export type Ruled = z.infer<typeof ruledSchema>;

/** One sentence: what was written, what follows from the learner's own report, what from the truth, and what it earned. */
export const sentenceLineSchema = z.strictObject({
  /** What is sentenced; on the line of the piece what decides over it, null where everything is accepted. */
  truthId: z.string().nullable(),
  /** The calls that stand for it; none on a miss and on the piece. */
  callIds: z.array(z.string()),
  /** The worst that was written. */
  written: sentence.nullable(),
  /** Null where nobody called it, or a call has no type. */
  fromWritten: ruledSchema.nullable(),
  fromTruth: ruledSchema,
  /** One, or more where the truth decides and lies too near a limit to tell; the worst first. */
  right: z.array(sentence).min(1),
  decidedBy: z.enum(["written", "truth"]),
  /** Thousandths of a mark. */
  worth: z.int().min(0),
  earned: z.int().min(0),
});
export type SentenceLine = z.infer<typeof sentenceLineSchema>;
