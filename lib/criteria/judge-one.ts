import { imperfection } from "../imperfections";
import type { Criterion } from "./criteria";
import { exceeds, figure, withUnit } from "./figures";
import type { Finding, Outcome, Reason } from "./finding";
import { workOut } from "./formula";
import { type Indication, type Piece, quantityOf } from "./indication";
import { describeLimit, type Limit } from "./limit";
import { QUANTITY_FACTS, SYMBOL_FACTS, type SymbolName } from "./symbols";

type Part = Partial<Finding> & { readonly outcome: Outcome };
const cannot = (reason: Reason, why: string): Part => ({ outcome: "cannot-be-judged", reason, why });

/** "b, the width of the root run, is not given". */
export const symbolMissing = (symbol: SymbolName): string =>
  `${SYMBOL_FACTS[symbol].sign}, the ${SYMBOL_FACTS[symbol].name}, is not given`;

/** A finding of a row with nothing in it but where it stands and its rule. */
export const findingOf = (
  row: Pick<Criterion, "id" | "clause" | "name" | "evidence" | "notes">,
  rule: string,
): Finding => ({
  row: row.id,
  clause: row.clause,
  name: row.name,
  outcome: "accept",
  rule,
  worked: null,
  limit: null,
  found: null,
  foundText: null,
  reason: null,
  why: null,
  window: null,
  evidence: row.evidence,
  notes: row.notes,
});

/** What a row that holds on the piece says of one indication by itself, sums left out. */
export function judgeOne(row: Criterion, indication: Indication, piece: Piece): Finding {
  const part = judge(row.limit, indication, piece);
  const open =
    part.outcome === "accept" && row.alsoNeeds !== undefined
      ? cannot("condition", `it also takes ${row.alsoNeeds}`)
      : {};
  return { ...findingOf(row, describeLimit(row.limit)), ...part, ...open };
}

function judge(limit: Limit, indication: Indication, piece: Piece): Part {
  switch (limit.kind) {
    case "not-permitted":
      return { outcome: "reject" };
    case "permitted":
      return { outcome: "accept" };
    case "depends":
      return cannot(limit.on, limit.text);
    case "not-by-eye":
      return cannot("other-method", `it takes ${limit.needs}`);
    case "area-at-most":
      return cannot("other-method", "areas inside the weld are not seen by eye");
    case "at-least": {
      const found = foundOf(indication, limit.quantity);
      if (found.value === null) return found.lacking;
      const outcome = exceeds(limit.value, found.value) ? "reject" : "accept";
      return { outcome, limit: limit.value, found: found.value, foundText: found.text };
    }
    case "at-most": {
      const found = foundOf(indication, limit.quantity);
      const worked = workOut(limit.formula, piece.values);
      const isKnown = "value" in worked;
      const numbers = isKnown ? { limit: worked.value, worked: worked.text } : {};
      if (found.value === null) return { ...numbers, ...found.lacking };
      const there = { ...numbers, found: found.value, foundText: found.text };
      if (isKnown) return { ...there, outcome: exceeds(found.value, worked.value) ? "reject" : "accept" };
      if (worked.under !== null && exceeds(found.value, worked.under)) {
        const why = `${symbolMissing(worked.missing)}, but ${figure(worked.under)} mm is the most in any case`;
        return { ...there, outcome: "reject", limit: worked.under, why };
      }
      return { ...there, ...cannot("missing-measure", symbolMissing(worked.missing)) };
    }
  }
}

function foundOf(indication: Indication, quantity: keyof typeof QUANTITY_FACTS) {
  const { name, unit } = QUANTITY_FACTS[quantity];
  const value = quantityOf(indication, quantity);
  if (value !== null) return { value, text: `measured ${withUnit(value, unit)}` };
  const lacking = cannot(
    "missing-measure",
    `the ${name} of the ${imperfection(indication.type).name.toLowerCase()} is not measured`,
  );
  return { value, lacking };
}
