import { z } from "zod";
import { IMPERFECTION_TYPES, type ImperfectionType } from "../imperfections";
import { SURFACE_FACES } from "../weld";
import { fields } from "./fields";
import { formulaSchema } from "./formula";
import { limitSchema } from "./limit";
import { rangeSchema } from "./range";
import { sumRuleSchema } from "./sum-rule";

/** How a row was checked. Where its parts differ, the weakest counts and the notes say which it is. */
export const EVIDENCE = ["text", "secondary", "quoted", "single-source", "memory", "own"] as const;
export type Evidence = (typeof EVIDENCE)[number];

export const EVIDENCE_NAMES: Readonly<Record<Evidence, string>> = {
  text: "checked in the standard's own table",
  secondary: "two or more secondary sources agree",
  quoted: "quoted by public sources; how many for each number is not noted",
  "single-source": "one secondary source, and memory agrees",
  memory: "from memory",
  own: "in-house criterion",
};

const line = (field: string, most: number) =>
  z
    .string({ error: `${field}: a text of 1 to ${most} characters` })
    .trim()
    .min(1, `${field}: a text of 1 to ${most} characters`)
    .max(most, `${field}: a text of 1 to ${most} characters`);

const typeSchema = z.enum(IMPERFECTION_TYPES as readonly [ImperfectionType, ...ImperfectionType[]], {
  error: `types: types of the catalogue, like ${IMPERFECTION_TYPES[0]}`,
});
const facesSchema = z
  .array(z.enum(SURFACE_FACES, { error: `faces: ${SURFACE_FACES.join(", ")}` }), { error: "faces: a list" })
  .min(1, `faces: at least one of ${SURFACE_FACES.join(", ")}`);
const idSchema = z
  .string({ error: "id: small letters, digits, full stops and hyphens, at most 40" })
  .regex(/^[a-z0-9.-]{1,40}$/, "id: small letters, digits, full stops and hyphens, at most 40");

/** What every rule has: where it is written, what it speaks of, how sure it is. */
const ruleShape = {
  id: idSchema,
  /** Clause, table or row of the document. */
  clause: line("clause", 60),
  name: line("name", 120),
  /** Types that it speaks of. A built-in row that speaks of none stands in the table for completeness and judges nothing. */
  types: z.array(typeSchema, { error: "types: a list of types" }),
  /** Faces on which it holds: cap and root of a butt weld, or a fillet. */
  faces: facesSchema,
  /** All of them must hold on the piece, thickness and others. */
  ranges: z.array(rangeSchema, { error: "ranges: a list" }),
  evidence: z.enum(EVIDENCE, { error: `evidence: one of ${EVIDENCE.join(", ")}` }),
  notes: z.string({ error: "notes: a text, which may be empty" }).trim().max(600, "notes: at most 600 characters"),
};

const RULE_FIELDS = Object.keys(ruleShape).join(", ");

/** One limit of a criteria set. */
const criterionSchema = z.strictObject(
  {
    ...ruleShape,
    limit: limitSchema,
    /** What its indications may add up to. */
    sums: z.array(sumRuleSchema, { error: "sums: a list" }),
    /** What else must be known before anything can be accepted, in words; left out where nothing else must. */
    alsoNeeds: line("alsoNeeds", 300).optional(),
  },
  fields("row", `${RULE_FIELDS}, limit, sums, alsoNeeds`),
);
export type Criterion = z.infer<typeof criterionSchema>;

/** What the depths of two or more indications in one cross section may add up to. */
const sectionRuleSchema = z.strictObject(
  {
    ...ruleShape,
    most: z.discriminatedUnion(
      "kind",
      [
        z.strictObject({ kind: z.literal("not-permitted") }, fields("most", "kind")),
        z.strictObject({ kind: z.literal("at-most"), formula: formulaSchema }, fields("most", "kind, formula")),
        /** The document has a limit, and it is not known here. */
        z.strictObject({ kind: z.literal("not-known") }, fields("most", "kind")),
      ],
      { error: "kind: not-permitted, at-most or not-known" },
    ),
  },
  fields("section rule", `${RULE_FIELDS}, most`),
);
export type SectionRule = z.infer<typeof sectionRuleSchema>;

/** Acceptance criteria as data. */
export const criteriaSchema = z.strictObject(
  {
    version: z.literal(1, { error: "version: 1" }),
    id: idSchema,
    name: line("name", 120),
    /** The document and its edition, as people should quote it. */
    edition: line("edition", 200),
    notes: z.string({ error: "notes: a text, which may be empty" }).trim().max(1000, "notes: at most 1000 characters"),
    rows: z.array(criterionSchema, { error: "rows: a list" }).max(300, "rows: at most 300"),
    sections: z.array(sectionRuleSchema, { error: "sections: a list" }).max(20, "sections: at most 20"),
  },
  fields("criteria", "version, id, name, edition, notes, rows, sections"),
);
export type Criteria = z.infer<typeof criteriaSchema>;
