import { z } from "zod";
import type { AskedQuestion } from "../results";
import { SURFACE_FACES } from "../weld";

/** Where a question comes from: the piece itself, its drawing, the trade, or the criteria it is judged by. */
export const SOURCES = ["piece", "criteria", "drawing", "trade"] as const;
export type Source = (typeof SOURCES)[number];

const place = z.number().min(0).max(1000);
const line = z.string().min(1).max(200);

/** One question of a section as it is stored, with its key. It never leaves the server before the section is handed in. */
export const questionSchema = z
  .strictObject({
    /** Tells nothing but the order: q1, q2 and so on. */
    id: z.string().regex(/^q[1-9][0-9]?$/),
    kind: z.string().regex(/^[a-z0-9-]{1,40}$/),
    source: z.enum(SOURCES),
    stem: z.string().min(1).max(600),
    options: z.tuple([line, line, line, line]).readonly(),
    /** Which of the options is right. */
    key: z.int().min(0).max(3),
    /** Why it is right, with the numbers and where they come from, and which error each of the others stands for. */
    explanation: z.string().min(1).max(2000),
    /** What it is about on the piece, mm from the datum end; null where it is about no place. */
    place: z
      .strictObject({ face: z.enum(SURFACE_FACES), start: place, end: place })
      .readonly()
      .nullable(),
  })
  .refine(({ options }) => new Set(options).size === options.length, {
    error: "four different options",
    path: ["options"],
  })
  .readonly();
export type Question = z.infer<typeof questionSchema>;
export type Place = NonNullable<Question["place"]>;

/** What of a question may go to the browser while the section is open. */
export const asked = ({ id, stem, options }: Question): AskedQuestion => ({ id, stem, options });
