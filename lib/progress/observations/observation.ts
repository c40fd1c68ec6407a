import { z } from "zod";
import { CLUTTER, IMPERFECTION_TYPES, type ImperfectionType } from "../../imperfections";
import { MARKED_SECTIONS } from "../../results";
import { DIMENSIONS, SURFACE_FACES } from "../../weld";

const typeSchema = z.enum(IMPERFECTION_TYPES as readonly [ImperfectionType, ...ImperfectionType[]]);
const count = z.int().min(0);
const share = z.number().min(0).max(1);

/** What of an imperfection strikes the eye: the size a gauge gives, its length along the weld, or its width. */
export const EYE_MEASURES = ["size", "length", "width"] as const;
export type EyeMeasure = (typeof EYE_MEASURES)[number];

/**
 * right: one of the right sentences. lenient: it lets pass what had to be rejected or referred. strict: it rejects or refers
 * what could be accepted. other: rejected for referred, or the other way round. blank: none was written.
 */
export const SENTENCE_VERDICTS = ["right", "lenient", "strict", "other", "blank"] as const;
export type SentenceVerdict = (typeof SENTENCE_VERDICTS)[number];

/** What became of one imperfection, or of one neutral feature. Lengths in mm; differences are what was written less what is true. */
export const truthObservationSchema = z.strictObject({
  truthId: z.string(),
  type: typeSchema,
  face: z.enum(SURFACE_FACES),
  start: z.number(),
  end: z.number(),
  across: z.number(),
  /** Depth, height, diameter, difference or gap, as the catalogue has it for the type; null where nobody measures one. */
  size: z.number().nullable(),
  /** What strikes the eye of it, and how much of that there is, mm: the abscissa of detection against size. */
  eye: z.strictObject({ measure: z.enum(EYE_MEASURES), value: z.number().positive() }),
  /** How hard it is to find by the generator's model, logits: whoever has this ability finds it every second time. */
  difficulty: z.number(),
  /** Too small to record or harmless: it counts neither as a find nor as a miss. */
  neutral: z.boolean(),
  /** Some call stands for it, alone, as one of several, or for several. */
  found: z.boolean(),
  /** How far the call is in the right place, 0 to 1; 0 where nobody called it. */
  placed: share,
  /** Which one of the report's indications it was, 1 for the first; of several the first. Null on a miss, and on one that a tutor counts as found. */
  order: z.int().min(1).nullable(),
  /** What the call named it; null on a miss and where no type was written. Of several calls the worst named one. */
  namedAs: typeSchema.nullable(),
  /** Size as written, and by how much it is off. Null on a miss, where none was written, and where one call covers several. */
  sizeWritten: z.number().nullable(),
  sizeError: z.number().nullable(),
  /** By how much start, end and middle across are off; null as with the size, and for the end of a point. */
  startError: z.number().nullable(),
  endError: z.number().nullable(),
  acrossError: z.number().nullable(),
  /** What its sentence was; null where nothing was sentenced, and on neutral features. */
  sentence: z.enum(SENTENCE_VERDICTS).nullable(),
});
export type TruthObservation = z.infer<typeof truthObservationSchema>;

/** One call where nothing is to be called. */
export const falseCallObservationSchema = z.strictObject({
  callId: z.string(),
  face: z.enum(SURFACE_FACES),
  /** What it was called; null where no type was written. */
  namedAs: typeSchema.nullable(),
  /** mm from the datum. */
  start: z.number(),
  across: z.number(),
  /** What lies there and is no imperfection; null where nothing does. */
  on: z.enum(CLUTTER).nullable(),
});
export type FalseCallObservation = z.infer<typeof falseCallObservationSchema>;

/** One piece of clutter, taken for an imperfection or left alone. */
export const clutterObservationSchema = z.strictObject({
  clutterId: z.string(),
  kind: z.enum(CLUTTER),
  face: z.enum(SURFACE_FACES),
  called: z.boolean(),
});
export type ClutterObservation = z.infer<typeof clutterObservationSchema>;

/** One dimension of the piece; values in the dimension's own unit. */
export const dimensionObservationSchema = z.strictObject({
  dimension: z.enum(DIMENSIONS),
  /** 1 at the datum end; null where the whole weld is meant. */
  station: z.int().min(1).nullable(),
  written: z.number().nullable(),
  actual: z.number(),
});
export type DimensionObservation = z.infer<typeof dimensionObservationSchema>;

/** One question. */
export const questionObservationSchema = z.strictObject({
  question: z.string(),
  kind: z.string(),
  /** Positions among its options. */
  key: z.int().min(0).max(3),
  written: z.int().min(0).max(3).nullable(),
});
export type QuestionObservation = z.infer<typeof questionObservationSchema>;

/** Everything that one handed-in section tells of whoever handed it in. Stored as a value; it holds truth. */
export const sectionObservationsSchema = z.strictObject({
  version: z.literal(3),
  section: z.enum(MARKED_SECTIONS),
  /** As it counts: thousandths of a mark, and marks needed to pass. */
  mark: z.int().min(0).max(100_000),
  passMark: z.number().min(0).max(100),
  passed: z.boolean(),
  /** Length of weld looked at, mm: both faces of a plate count. */
  weldLength: z.number().min(0),
  /** Time at the piece; null where it is not known. */
  seconds: count.nullable(),
  /** Calls without a place, which count neither way. */
  notCounted: count,
  truths: z.array(truthObservationSchema),
  /** Imperfections that a tutor's overruling leaves open: misses that were given a part of their marks. They are not among the truths. */
  leftOpen: count,
  falseCalls: z.array(falseCallObservationSchema),
  clutter: z.array(clutterObservationSchema),
  dimensions: z.array(dimensionObservationSchema),
  questions: z.array(questionObservationSchema),
  /** On the piece as a whole; null where nothing was sentenced. */
  pieceSentence: z.enum(SENTENCE_VERDICTS).nullable(),
});
export type SectionObservations = z.infer<typeof sectionObservationsSchema>;

/** True where there was nothing to find. */
export const isClean = ({ truths, leftOpen }: SectionObservations): boolean =>
  leftOpen === 0 && truths.every(({ neutral }) => neutral);
