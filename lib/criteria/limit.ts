import { z } from "zod";
import { fields } from "./fields";
import { figure } from "./figures";
import { describeFormula, formulaSchema } from "./formula";
import { LENGTHS, QUANTITIES, QUANTITY_FACTS } from "./symbols";

const words = (what: string) =>
  z
    .string({ error: `${what}: a sentence` })
    .trim()
    .min(1, `${what}: a sentence`)
    .max(400, `${what}: at most 400 characters`);

const PERCENT = "percent: 0 to 100";
const oneOf = (names: readonly string[]) => `quantity: one of ${names.join(", ")}`;

/** What a criterion says of one imperfection by itself. */
export const limitSchema = z.discriminatedUnion(
  "kind",
  [
    z.strictObject({ kind: z.literal("not-permitted") }, fields("limit", "kind")),
    z.strictObject({ kind: z.literal("permitted") }, fields("limit", "kind")),
    z.strictObject(
      {
        kind: z.literal("at-most"),
        quantity: z.enum(LENGTHS, { error: oneOf(LENGTHS) }),
        formula: formulaSchema,
        /** Only as a short imperfection (ISO 5817). */
        shortOnly: z.boolean({ error: "shortOnly: true or false" }).optional(),
      },
      fields("limit", "kind, quantity, formula, shortOnly"),
    ),
    z.strictObject(
      {
        kind: z.literal("at-least"),
        quantity: z.enum(QUANTITIES, { error: oneOf(QUANTITIES) }),
        /** mm or degrees, as the quantity says. */
        value: z
          .number({ error: "value: a number of 0 or more" })
          .min(0, "value: a number of 0 or more")
          .max(1000, "value: at most 1000"),
      },
      fields("limit", "kind, quantity, value"),
    ),
    z.strictObject(
      {
        kind: z.literal("depends"),
        on: z.enum(["application", "condition"], { error: "on: application or condition" }),
        text: words("text"),
      },
      fields("limit", "kind, on, text"),
    ),
    z.strictObject({ kind: z.literal("not-by-eye"), needs: words("needs") }, fields("limit", "kind, needs")),
    z.strictObject({
      kind: z.literal("area-at-most"),
      percent: z.number({ error: PERCENT }).min(0, PERCENT).max(100, PERCENT),
    }),
  ],
  {
    error: "kind: one of not-permitted, permitted, at-most, at-least, depends, not-by-eye, area-at-most",
  },
);
export type Limit = z.infer<typeof limitSchema>;

/** In words: "h ≤ 0.1 t, at most 0.5 mm". */
export function describeLimit(limit: Limit): string {
  switch (limit.kind) {
    case "not-permitted":
      return "not permitted";
    case "permitted":
      return "permitted";
    case "at-most": {
      const rule = `${QUANTITY_FACTS[limit.quantity].sign} ≤ ${describeFormula(limit.formula)}`;
      return limit.shortOnly ? `${rule}, as a short imperfection only` : rule;
    }
    case "at-least": {
      const { sign, unit } = QUANTITY_FACTS[limit.quantity];
      return `${sign} ≥ ${figure(limit.value)}${unit === "mm" ? " mm" : "°"}`;
    }
    case "depends":
      return limit.text;
    case "not-by-eye":
      return `not judged by eye: ${limit.needs}`;
    case "area-at-most":
      return `at most ${figure(limit.percent)} % of the area`;
  }
}
