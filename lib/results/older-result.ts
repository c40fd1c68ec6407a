import { z } from "zod";
import { accountLineSchema } from "./account";
import {
  dimensionsResultSchema,
  indicationsResultSchema,
  marksSchema,
  type SectionResult,
  sectionResultSchema,
  sectionTotalsSchema,
} from "./section-result";

/** A section as it was stored while each face was a section of its own and had nothing but indications. */
const oneFaceSchema = z
  .strictObject({
    version: z.literal(1),
    ruleVersion: z.string().min(1),
    section: z.enum(["cap", "root"]),
    passMark: marksSchema,
    mark: z.int().min(0).max(100_000),
    shown: marksSchema,
    passed: z.boolean(),
    totals: sectionTotalsSchema,
    lines: z.array(accountLineSchema),
  })
  .refine(({ lines, mark }) => lines.reduce((sum, line) => sum + line.earned, 0) === mark, {
    error: "the lines must add up to the mark",
    path: ["lines"],
  });

/** A section as it was stored while nothing was sentenced and no questions were asked. */
const twoPartsSchema = z
  .strictObject({
    ...sectionResultSchema.shape,
    version: z.literal(2),
    indications: indicationsResultSchema,
    dimensions: dimensionsResultSchema.nullable(),
  })
  .omit({ sentences: true, questions: true })
  .refine(({ mark, indications, dimensions }) => indications.earned + (dimensions?.earned ?? 0) === mark, {
    error: "the parts must add up to the mark",
    path: ["mark"],
  });

/** A result as stored by any version, in the shape of today; the marks stay what they are. */
export const storedResultSchema: z.ZodType<SectionResult> = z.union([
  sectionResultSchema,
  twoPartsSchema.transform((old): SectionResult => ({ ...old, version: 3, sentences: null, questions: null })),
  oneFaceSchema.transform(({ totals, lines, ...old }): SectionResult => {
    const indications = { part: "indications", worth: 100_000, earned: old.mark, totals, lines } as const;
    return { ...old, version: 3, indications, dimensions: null, sentences: null, questions: null };
  }),
]);
