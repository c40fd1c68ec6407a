import { z } from "zod";
import { CLUTTER } from "../imperfections";
import { PARTS } from "./rule";

/** Thousandths of a mark: 100,000 is a whole section. */
const thousandths = z.int();
const share = z.int().min(0).max(1000);
const written = z.union([z.number(), z.string()]).nullable();

/** One part of one line: what was written, what is true, and what it earned. Lengths in mm. */
export const partAccountSchema = z.strictObject({
  part: z.enum(PARTS),
  written,
  actual: written,
  /** mm, never negative; null where there is nothing to subtract. */
  error: z.number().min(0).nullable(),
  /** Error up to which the part earns in full, and from which on it earns nothing, mm. */
  tolerance: z.number().nullable(),
  nothingFrom: z.number().nullable(),
  /** Thousandths of the part earned, before place and blemishes of the whole line take their share. */
  share,
  earned: thousandths,
  full: thousandths,
});
export type PartAccount = z.infer<typeof partAccountSchema>;

/** How far a line's calls are in the right place. Lengths in mm. */
export const placeAccountSchema = z.strictObject({
  /** How far the call sticks out of, or lies away from, the truth along the weld. */
  stickOut: z.number().min(0),
  stickOutTolerance: z.number(),
  stickOutNothingFrom: z.number(),
  /** How far it lies beside the truth. */
  beside: z.number().min(0),
  besideTolerance: z.number(),
  besideNothingFrom: z.number(),
  /** Widest gap between the pieces, or between the truths, or null where there is one of each. */
  gap: z.number().min(0).nullable(),
  /** Thousandths. */
  share,
});
export type PlaceAccount = z.infer<typeof placeAccountSchema>;

/**
 * found: one call, everything earned. partly: one call, something lost. missed: nobody called it. split: two or three
 * calls on one indication. merged: one call over two or three. neutral-called, neutral-left: a harmless or too small
 * feature. false-call: nothing there. not-counted: no place written. nothing-to-find: the 100 marks of a clean
 * section. floor: what lifts a section below 0 to 0.
 */
export const LINE_KINDS = [
  "found",
  "partly",
  "missed",
  "split",
  "merged",
  "neutral-called",
  "neutral-left",
  "false-call",
  "not-counted",
  "nothing-to-find",
  "floor",
] as const;
export type LineKind = (typeof LINE_KINDS)[number];

/** One line of the account. Every truth and every call of the section stands in exactly one line. */
export const accountLineSchema = z
  .strictObject({
    kind: z.enum(LINE_KINDS),
    truthIds: z.array(z.string()),
    callIds: z.array(z.string()),
    /** What the truths of this line are worth. */
    worth: thousandths,
    /** What the line adds to the mark: all parts + cost + back. */
    earned: thousandths,
    place: placeAccountSchema.nullable(),
    /** Share kept after the blemish of a split or merged call, 1 where there is none. */
    kept: z.number().min(0).max(1),
    parts: z.array(partAccountSchema),
    /** What the calls cost, 0 or less. */
    cost: thousandths.max(0),
    /** What they got back for being in the right place. */
    back: thousandths.min(0),
    /** On a false call: what really lies there and is no imperfection, from the truth's clutter. Results of before have none. */
    clutter: z
      .strictObject({ id: z.string(), kind: z.enum(CLUTTER) })
      .nullable()
      .default(null),
  })
  .refine(
    (line) => {
      if (line.kind === "floor" || line.kind === "nothing-to-find") return true;
      return line.earned === line.parts.reduce((sum, part) => sum + part.earned, line.cost + line.back);
    },
    { error: "earned must be the sum of the parts, cost and back" },
  );
export type AccountLine = z.infer<typeof accountLineSchema>;
