import { z } from "zod";
import { FAMILIES, type Family, IMPERFECTION_TYPES, type ImperfectionType, imperfection } from "../../imperfections";
import { BUTT_PLATE_LENGTH, type Face, POSITIONS, PROCESSES } from "../../weld";
import { SIZE_BANDS, type SizeBand } from "../difficulty";
import type { JointChoice } from "./joint";
import { type Range, SITES, type Site } from "./rows";

/** A number of indications of a kind: family, size among its kind, and where it lies. */
export interface Slot {
  readonly count: number;
  readonly families: "any" | readonly Family[];
  /** Of these families only these types; all of them where nothing is said. */
  readonly types?: readonly ImperfectionType[];
  readonly band: "any" | SizeBand;
  readonly place: "any" | Site;
}

/** What is to be on one face. */
export interface SectionBlueprint {
  readonly slots: readonly Slot[];
  /** Most indications beyond the slots: what comes by itself, such as plates that stand apart. */
  readonly extras: number;
  /** Least length of weld without any indication, mm. */
  readonly cleanLength: number;
  /** From how many to how many harmless features that look like an imperfection, and of clutter. */
  readonly neutral: Range;
  readonly clutter: Range;
  /** Whether sizes may lie within the uncertainty of a limit. */
  readonly nearLimits: boolean;
  /** Mark to be expected of somebody who just passes, met within `WITHIN_MARKS`; null where any will do. */
  readonly expectedMark: number | null;
}

/** What a paper fixes of a specimen; everything else is drawn. */
export interface Blueprint {
  readonly joint: JointChoice;
  readonly sections: Readonly<Record<Face, SectionBlueprint>>;
}

/** How far the expected mark of a section may lie from what its blueprint says, marks. */
export const WITHIN_MARKS = 1;

const count = z.number().int().min(0).max(40);
const counts = z
  .tuple([count, count])
  .readonly()
  .refine(([least, most]) => least <= most, "from a smaller to a larger number");

const slotSchema = z.strictObject({
  count: count.min(1),
  families: z.union([z.literal("any"), z.array(z.enum(FAMILIES)).min(1).readonly()]),
  types: z.array(z.enum(IMPERFECTION_TYPES)).min(1).readonly().optional(),
  band: z.enum([...SIZE_BANDS, "any"]),
  place: z.enum([...SITES, "any"]),
});

const sectionSchema = z.strictObject({
  slots: z.array(slotSchema).max(40).readonly(),
  extras: count,
  cleanLength: z.number().min(0).max(10_000),
  neutral: counts,
  clutter: counts,
  nearLimits: z.boolean(),
  expectedMark: z.number().min(0).max(100).nullable(),
});

const thickness = z.number().int().min(6).max(25);

/** A blueprint as it comes in from outside: counts are whole numbers up to 40, plates 6 to 25 mm thick. */
export const blueprintSchema: z.ZodType<Blueprint> = z.strictObject({
  joint: z.strictObject({
    processes: z.array(z.enum(PROCESSES)).min(1).readonly(),
    positions: z.array(z.enum(POSITIONS)).min(1).readonly(),
    thickness: z
      .tuple([thickness, thickness])
      .readonly()
      .refine(([least, most]) => least <= most, "from the thinnest to the thickest"),
  }),
  sections: z.strictObject({ cap: sectionSchema, root: sectionSchema }),
});

/** True where a slot asks for imperfections of a type, whatever their size and place. */
export const asksFor = ({ families, types }: Slot, type: ImperfectionType): boolean =>
  (families === "any" || families.includes(imperfection(type).family)) && (types === undefined || types.includes(type));

/** How many indications a section asks for. */
export const countOf = (section: SectionBlueprint): number => section.slots.reduce((sum, slot) => sum + slot.count, 0);

/** One entry for every indication that the slots ask for: the number of its slot. */
export const unitsOf = (section: SectionBlueprint): number[] =>
  section.slots.flatMap((slot, n) => Array.from({ length: slot.count }, () => n));

/** Length of the weld of every specimen, mm. */
export const WELD_LENGTH = BUTT_PLATE_LENGTH;
