import { z } from "zod";
import { accountLineSchema } from "./account";
import { dimensionLineSchema, statementLineSchema } from "./dimension-line";
import { questionLineSchema } from "./question-line";
import { MARKED_SECTIONS } from "./sections";
import { sentenceLineSchema } from "./sentence-line";

/** A number of marks as people read it: 0 to 100 with at most one decimal, such as 69.9. */
export const marksSchema = z
  .number()
  .min(0)
  .max(100)
  .refine((value) => Math.abs(value * 10 - Math.round(value * 10)) < 1e-9, {
    error: "at most one decimal, for example 69.9",
  });

const count = z.int().min(0);

/** What the calls of a section sum up to. Marks in thousandths. */
export const sectionTotalsSchema = z.strictObject({
  /** Indications to be found, and neutral features beside them. */
  indications: count,
  neutral: count,
  /** Calls that have a place, and calls without one. */
  calls: count,
  notCounted: count,
  /** Indications with a call of their own, shared by several calls, sharing one call, and without any. */
  found: count,
  partly: count,
  split: count,
  merged: count,
  missed: count,
  falseCalls: count,
  /** Sum of all parts; of all prices paid (0 or less); of what came back; of the floor. */
  partsEarned: z.int(),
  cost: z.int().max(0),
  back: z.int().min(0),
  floor: z.int().min(0),
});
export type SectionTotals = z.infer<typeof sectionTotalsSchema>;

/** Thousandths of a section's mark: what a part could bring, and what it brought. */
const share = { worth: z.int().min(0).max(100_000), earned: z.int().min(0).max(100_000) };

const addUp = ({ lines, earned }: { lines: readonly { readonly earned: number }[]; earned: number }): boolean =>
  lines.reduce((sum, line) => sum + line.earned, 0) === earned;
const LINES_ADD_UP = { error: "the lines must add up to what the part earned", path: ["lines"] };

export const indicationsResultSchema = z
  .strictObject({
    part: z.literal("indications"),
    ...share,
    totals: sectionTotalsSchema,
    /** In plate order; calls without a place and the floor come last. */
    lines: z.array(accountLineSchema),
  })
  .refine(addUp, LINES_ADD_UP);
export type IndicationsResult = z.infer<typeof indicationsResultSchema>;

export const dimensionsResultSchema = z
  .strictObject({
    part: z.literal("dimensions"),
    ...share,
    lines: z.array(dimensionLineSchema),
    statements: z.array(statementLineSchema),
  })
  .refine(({ lines, statements, earned }) => addUp({ lines: [...lines, ...statements], earned }), LINES_ADD_UP);
export type DimensionsResult = z.infer<typeof dimensionsResultSchema>;

export const sentencesResultSchema = z
  .strictObject({
    part: z.literal("sentences"),
    ...share,
    /** By which criteria was sentenced. */
    criteria: z.strictObject({ id: z.string(), name: z.string(), edition: z.string() }),
    /** One for each imperfection, in plate order. */
    lines: z.array(sentenceLineSchema),
    piece: sentenceLineSchema,
  })
  .refine(({ lines, piece, earned }) => addUp({ lines: [...lines, piece], earned }), LINES_ADD_UP);
export type SentencesResult = z.infer<typeof sentencesResultSchema>;

export const questionsResultSchema = z
  .strictObject({ part: z.literal("questions"), ...share, lines: z.array(questionLineSchema) })
  .refine(addUp, LINES_ADD_UP);
export type QuestionsResult = z.infer<typeof questionsResultSchema>;

/** What each part brought, by its name; null where a part was not asked for. */
interface Parts {
  readonly indications: { readonly earned: number };
  readonly dimensions: { readonly earned: number } | null;
  readonly sentences: { readonly earned: number } | null;
  readonly questions: { readonly earned: number } | null;
}

/** What all parts of a section earned together, thousandths. */
export const earnedTogether = ({ indications, dimensions, sentences, questions }: Parts): number =>
  [indications, dimensions, sentences, questions].reduce((sum, part) => sum + (part?.earned ?? 0), 0);

/** One marked section, complete in itself: it is stored as a value and never computed again. */
export const sectionResultSchema = z
  .strictObject({
    version: z.literal(3),
    ruleVersion: z.string().min(1),
    section: z.enum(MARKED_SECTIONS),
    /** Marks needed to pass, at most one decimal. */
    passMark: marksSchema,
    /** Thousandths of a mark, 0..100,000. */
    mark: z.int().min(0).max(100_000),
    /** The mark as shown, one decimal; pass or fail is decided on it. */
    shown: marksSchema,
    passed: z.boolean(),
    indications: indicationsResultSchema,
    /** Null where no dimension was asked for. */
    dimensions: dimensionsResultSchema.nullable(),
    /** Null where nothing was to be sentenced. */
    sentences: sentencesResultSchema.nullable(),
    /** Null where nothing was asked. */
    questions: questionsResultSchema.nullable(),
  })
  .refine((section) => earnedTogether(section) === section.mark, {
    error: "the parts must add up to the mark",
    path: ["mark"],
  });
export type SectionResult = z.infer<typeof sectionResultSchema>;

/** Thousandths of a mark to the mark as shown, one decimal, half upwards: 69950 gives 70. */
export function shownMark(thousandths: number): number {
  return Math.floor((thousandths + 50) / 100) / 10;
}

/** Whether a shown mark reaches the pass mark; both have at most one decimal. */
export function isPass(shown: number, passMark: number): boolean {
  return Math.round(shown * 10) >= Math.round(passMark * 10);
}
