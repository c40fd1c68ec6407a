import { z } from "zod";
import type { Mm } from "../math";
import { fields } from "./fields";
import { figure } from "./figures";
import { describeFormula, formulaSchema } from "./formula";
import { LENGTHS, QUANTITY_FACTS } from "./symbols";

const positive = (field: string) =>
  z.number({ error: `${field}: a number above 0` }).positive(`${field}: a number above 0`);
const share = positive("share").max(1, "share: a share of the weld's length, above 0 and at most 1");

const countedQuantity = z.enum(LENGTHS, { error: `quantity: one of ${LENGTHS.join(", ")}` });

/** What the indications of one row may add up to. */
export const sumRuleSchema = z.strictObject(
  {
    /** Lengths in mm, diameters of pores in mm, or the number of pores. */
    sum: z.enum(["length", "diameter", "count"], { error: "sum: length, diameter or count" }),
    /** Which of them count: those whose quantity is over a value, or from a value on. All where it is left out. */
    counted: z
      .discriminatedUnion(
        "edge",
        [
          z.strictObject(
            { edge: z.literal("over"), quantity: countedQuantity, formula: formulaSchema },
            fields("counted", "edge, quantity, formula"),
          ),
          z.strictObject(
            { edge: z.literal("from"), quantity: countedQuantity, formula: formulaSchema },
            fields("counted", "edge, quantity, formula"),
          ),
        ],
        { error: "edge: over or from" },
      )
      .optional(),
    /** Length of weld, mm, in which is summed, wherever it lies; the whole weld where it is left out. */
    window: positive("window, mm").optional(),
    most: z.discriminatedUnion(
      "kind",
      [
        z.strictObject(
          {
            kind: z.literal("fixed"),
            /** mm, or a number of pores. */
            value: z.number({ error: "value: a number of 0 or more" }).min(0, "value: a number of 0 or more"),
            /** On a weld shorter than `under` mm the limit is a share of its length. */
            shorterWeld: z
              .strictObject({ under: positive("under, mm"), share }, fields("shorterWeld", "under, share"))
              .optional(),
          },
          fields("most", "kind, value, shorterWeld"),
        ),
        z.strictObject({ kind: z.literal("share"), share }, fields("most", "kind, share")),
      ],
      { error: "kind: fixed or share" },
    ),
  },
  fields("sum rule", "sum, counted, window, most"),
);
export type SumRule = z.infer<typeof sumRuleSchema>;

/** A short imperfection (ISO 5817): 25 mm in the worst 100 mm, on a shorter weld 25 % of its length. */
export const SHORT_IMPERFECTION: SumRule = {
  sum: "length",
  window: 100,
  most: { kind: "fixed", value: 25, shorterWeld: { under: 100, share: 0.25 } },
};

/** What a rule allows on a weld of that length: mm, or a number of pores. */
export function mostOn({ most }: SumRule, length: Mm): number {
  if (most.kind === "share") return most.share * length;
  const { value, shorterWeld } = most;
  return shorterWeld && length < shorterWeld.under ? shorterWeld.share * length : value;
}

function describeCounted({ edge, quantity, formula }: NonNullable<SumRule["counted"]>): string {
  const { atMost, ...plain } = formula;
  const bound = describeFormula(plain);
  const least = atMost === undefined ? bound : `${bound} or ${figure(atMost)} mm, whichever is less`;
  const { name } = QUANTITY_FACTS[quantity];
  return edge === "over" ? `${name} over ${least}` : `${name} of ${least} and more`;
}

const SUMMED = { length: "summed length", diameter: "summed diameters", count: "number" } as const;

/** In words: "summed length at most 25 mm in any 100 mm (25 % of a weld shorter than 100 mm)". */
export function describeSumRule({ sum, counted, window, most }: SumRule): string {
  const unit = sum === "count" ? "" : " mm";
  const where = window === undefined ? "along the whole weld" : `in any ${figure(window)} mm`;
  const percent = (part: number) => `${Number((100 * part).toFixed(1))} %`;
  const which = counted ? `, counting those with a ${describeCounted(counted)}` : "";
  if (most.kind === "share") return `${SUMMED[sum]} at most ${percent(most.share)} of the weld's length${which}`;
  const shorter = most.shorterWeld
    ? ` (${percent(most.shorterWeld.share)} of a weld shorter than ${figure(most.shorterWeld.under)} mm)`
    : "";
  return `${SUMMED[sum]} at most ${figure(most.value)}${unit} ${where}${shorter}${which}`;
}
