import { z } from "zod";
import { type LearnerTally, pieceTallySchema, typeTallySchema } from "../progress";
import { MARKED_SECTIONS } from "../results";
import { typeSchema } from "./report";

/**
 * The sums that the pages of progress are worked out from, as they are stored: lengths of weld in micrometres, marks and
 * differences (sums of them and of their squares) in thousandths, times in seconds.
 */
export const recordedProgressSchema = z.strictObject({
  lengthUnit: z.literal("micrometre"),
  markUnit: z.literal("thousandth of a mark"),
  differenceUnit: z.literal("thousandth of a millimetre or degree"),
  timeUnit: z.literal("second"),
  sections: z.array(z.strictObject({ section: z.enum(MARKED_SECTIONS), sums: pieceTallySchema })),
  types: z.array(z.strictObject({ type: typeSchema, sums: typeTallySchema })),
});
export type RecordedProgress = z.infer<typeof recordedProgressSchema>;

export const recordedProgress = ({ sections, types }: LearnerTally): RecordedProgress => ({
  lengthUnit: "micrometre",
  markUnit: "thousandth of a mark",
  differenceUnit: "thousandth of a millimetre or degree",
  timeUnit: "second",
  sections: entriesOf(sections).map(([section, sums]) => ({ section, sums })),
  types: entriesOf(types).map(([type, sums]) => ({ type, sums })),
});

const entriesOf = <Name extends string, T>(record: { readonly [name in Name]?: T }) =>
  Object.entries(record) as [Name, T][];
