import { z } from "zod";
import { fields } from "./fields";
import { figure } from "./figures";
import { SYMBOL_FACTS, SYMBOLS, type SymbolName, type SymbolValues } from "./symbols";

const edge = (field: string) =>
  z
    .number({ error: `${field}: a number of mm, 0 or more` })
    .min(0, `${field}: a number of mm, 0 or more`)
    .optional();

/** Where a row holds: `from` and `upTo` are inside it, `over` and `under` are not; mm. Left out is open. */
export const rangeSchema = z
  .strictObject(
    {
      symbol: z.enum(SYMBOLS, { error: `symbol: one of ${SYMBOLS.join(", ")}` }),
      from: edge("from"),
      over: edge("over"),
      upTo: edge("upTo"),
      under: edge("under"),
    },
    fields("range", "symbol, from, over, upTo, under"),
  )
  .superRefine(({ from, over, upTo, under }, context) => {
    const fail = (field: string, message: string) => context.addIssue({ code: "custom", path: [field], message });
    if (from !== undefined && over !== undefined) fail("over", "over: either from or over, not both");
    if (upTo !== undefined && under !== undefined) fail("under", "under: either upTo or under, not both");
    const low = from ?? over;
    const high = upTo ?? under;
    if (low === undefined && high === undefined) fail("from", "from: at least one of from, over, upTo and under");
    if (low !== undefined && high !== undefined && (low > high || (low === high && (over ?? under) !== undefined))) {
      fail(upTo === undefined ? "under" : "upTo", `more than the lower edge, ${low} mm`);
    }
  });
export type Range = z.infer<typeof rangeSchema>;

const holds = ({ from, over, upTo, under }: Range, value: number): boolean =>
  (from === undefined || value >= from) &&
  (over === undefined || value > over) &&
  (upTo === undefined || value <= upTo) &&
  (under === undefined || value < under);

/** Whether all ranges hold on a piece, or the first symbol that would decide and is not known. */
export function withinRanges(ranges: readonly Range[], values: SymbolValues): boolean | { missing: SymbolName } {
  let missing: SymbolName | null = null;
  for (const range of ranges) {
    const value = values[range.symbol];
    if (value === undefined) missing ??= range.symbol;
    else if (!holds(range, value)) return false;
  }
  return missing === null ? true : { missing };
}

/** In words: "t over 3 mm", "t from 0.5 up to 3 mm". */
export function describeRange({ symbol, from, over, upTo, under }: Range): string {
  const low = from !== undefined ? `from ${figure(from)}` : over !== undefined ? `over ${figure(over)}` : null;
  const high = upTo !== undefined ? `up to ${figure(upTo)}` : under !== undefined ? `under ${figure(under)}` : null;
  return `${SYMBOL_FACTS[symbol].sign} ${[low, high].filter((part) => part !== null).join(" ")} mm`;
}
