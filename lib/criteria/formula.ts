import { z } from "zod";
import type { Mm } from "../math";
import { fields } from "./fields";
import { figure, measure } from "./figures";
import { SYMBOL_FACTS, SYMBOLS, type SymbolName, type SymbolValues } from "./symbols";

const figureOf = (what: string) =>
  z.number({ error: `${what}: a number of 0 or more` }).min(0, `${what}: a number of 0 or more`);

/**
 * A length as data: constant + coefficient x symbol, and at most `atMost`, all lengths in mm. Left out is 0, or no cap. A
 * symbol never stands without its coefficient.
 */
export const formulaSchema = z
  .strictObject(
    {
      constant: figureOf("constant, mm").max(1000, "constant, mm: at most 1000").optional(),
      coefficient: figureOf("coefficient").max(100, "coefficient: at most 100").optional(),
      symbol: z.enum(SYMBOLS, { error: `symbol: one of ${SYMBOLS.join(", ")}` }).optional(),
      atMost: figureOf("atMost, mm").max(1000, "atMost, mm: at most 1000").optional(),
    },
    fields("formula", "constant, coefficient, symbol, atMost"),
  )
  .superRefine(({ constant, coefficient, symbol }, context) => {
    if ((coefficient === undefined) !== (symbol === undefined)) {
      const lacking = symbol === undefined ? "symbol" : "coefficient";
      const message = `${lacking}: a coefficient and the symbol that it multiplies go together, like 0.1 and t`;
      context.addIssue({ code: "custom", path: [lacking], message });
    }
    if (constant === undefined && coefficient === undefined) {
      context.addIssue({
        code: "custom",
        path: ["constant"],
        message: "a constant in mm, or a coefficient and a symbol",
      });
    }
  });
export type Formula = z.infer<typeof formulaSchema>;

/** A formula with the numbers of a piece put in. */
export type Worked =
  /** The text is null where nothing had to be put in. */
  | { readonly value: Mm; readonly text: string | null }
  /** The symbol's value is not known; the value is `under` at most, or anything where that is null. */
  | { readonly missing: SymbolName; readonly under: Mm | null };

/** Puts the numbers in: 0.1 t at most 0.5 mm with t = 10 is 0.5, "0.1 × 10 = 1.0, capped at 0.5 mm". */
export function workOut({ constant = 0, coefficient, symbol, atMost }: Formula, values: SymbolValues): Worked {
  const by = symbol === undefined ? 1 : values[symbol];
  if (symbol !== undefined && by === undefined) return { missing: symbol, under: atMost ?? null };
  const plain = constant + (coefficient ?? 0) * (by as Mm);
  const isCapped = atMost !== undefined && plain > atMost;
  const product = `${figure(coefficient ?? 0)} × ${figure(by as Mm)}`;
  const sum = constant > 0 ? `${figure(constant)} + ${product}` : product;
  const result = isCapped ? `${measure(plain)}, capped at ${measure(atMost)} mm` : `${measure(plain)} mm`;
  return { value: isCapped ? atMost : plain, text: symbol === undefined ? null : `${sum} = ${result}` };
}

/** In words: "1 mm + 0.25 b, at most 10 mm". */
export function describeFormula({ constant = 0, coefficient, symbol, atMost }: Formula): string {
  const sign = symbol && SYMBOL_FACTS[symbol].sign;
  const parts = [
    ...(constant > 0 || symbol === undefined ? [`${figure(constant)} mm`] : []),
    ...(symbol === undefined ? [] : [coefficient === 1 ? sign : `${figure(coefficient as number)} ${sign}`]),
  ];
  return `${parts.join(" + ")}${atMost === undefined ? "" : `, at most ${figure(atMost)} mm`}`;
}
