import type { Mm } from "../math";
import type { Criterion } from "./criteria";
import { exceeds, withUnit } from "./figures";
import type { Finding } from "./finding";
import { workOut } from "./formula";
import { type Indication, isPoreGroup, type Piece, quantityOf } from "./indication";
import { findingOf, symbolMissing } from "./judge-one";
import { describeSumRule, mostOn, SHORT_IMPERFECTION, type SumRule } from "./sum-rule";
import { QUANTITY_FACTS, type Quantity } from "./symbols";
import { type Load, type Window, worstWindow, worstWindows } from "./windows";

/** What a rule over several indications comes to: for the weld, and for each indication that counts. */
export interface Summed {
  readonly whole: Finding;
  readonly ofEach: readonly { readonly indication: Indication; readonly finding: Finding }[];
}

/** All rules of a row over the indications that it speaks of; nothing where there is none of either. */
export function judgeSums(row: Criterion, indications: readonly Indication[], piece: Piece): Summed[] {
  if (indications.length === 0) return [];
  const short = row.limit.kind === "at-most" && row.limit.shortOnly ? [SHORT_IMPERFECTION] : [];
  return [...short, ...row.sums].map((rule) => judgeSum(rule, row, indications, piece));
}

function judgeSum(rule: SumRule, row: Criterion, indications: readonly Indication[], piece: Piece): Summed {
  const blank = findingOf(row, describeSumRule(rule));
  const shares = indications.map((indication) => ({ indication, share: shareOf(rule, indication, piece) }));
  const counting = shares.flatMap(({ indication, share }) =>
    "load" in share ? [{ indication, load: share.load }] : [],
  );
  const open = shares.flatMap(({ indication, share }) =>
    "lacking" in share ? [{ indication, why: share.lacking }] : [],
  );
  const loads = counting.map(({ load }) => load);
  const width = rule.window ?? piece.length;
  const most = mostOn(rule, piece.length);
  const findingIn = (window: Window): Finding => ({
    ...blank,
    outcome: exceeds(window.sum, most) ? "reject" : "accept",
    limit: most,
    worked: workedOf(rule, piece.length, most),
    found: window.sum,
    foundText: summedText(rule, window),
    window,
  });
  const windows = worstWindows(loads, width, piece.length);
  const unknown = (why: string) => ({ outcome: "cannot-be-judged", reason: "missing-measure", why }) as const;
  const known = findingIn(worstWindow(loads, width, piece.length));
  return {
    whole: open.length > 0 && known.outcome === "accept" ? { ...known, ...unknown(open[0].why) } : known,
    ofEach: [
      ...counting.map(({ indication }, n) => ({ indication, finding: findingIn(windows[n]) })),
      ...open.map(({ indication, why }) => ({ indication, finding: { ...blank, ...unknown(why) } })),
    ],
  };
}

type Share = { readonly load: Load } | { readonly lacking: string } | { readonly none: true };

/** What one indication adds to a sum, nothing where it does not count, or what must be measured to know. */
function shareOf(rule: SumRule, indication: Indication, piece: Piece): Share {
  const { start, end } = indication;
  if (rule.counted) {
    const { edge, quantity, formula } = rule.counted;
    const value = quantityOf(indication, quantity);
    if (value === null) return { lacking: notMeasured(quantity) };
    const bound = workOut(formula, piece.values);
    if (!("value" in bound)) return { lacking: symbolMissing(bound.missing) };
    if (edge === "over" ? !exceeds(value, bound.value) : exceeds(bound.value, value)) return { none: true };
  }
  const middle = (start + end) / 2;
  const atMiddle = (amount: number): Share => ({ load: { from: middle, to: middle, amount } });
  const isGroup = isPoreGroup(indication.type);
  // a group is two pores at the least
  if (rule.sum === "count") return atMiddle(isGroup ? 2 : 1);
  if (rule.sum === "length") {
    const amount = quantityOf(indication, "length");
    return amount === null ? { lacking: notMeasured("length") } : { load: { from: start, to: end, amount } };
  }
  const quantity = isGroup ? "diameter-sum" : "diameter";
  const amount = quantityOf(indication, quantity);
  if (amount === null) return { lacking: notMeasured(quantity) };
  return isGroup ? { load: { from: start, to: end, amount } } : atMiddle(amount);
}

const notMeasured = (quantity: Quantity): string => `the ${QUANTITY_FACTS[quantity].name} is not measured`;

function workedOf({ most, sum }: SumRule, length: Mm, value: number): string | null {
  const share =
    most.kind === "share"
      ? most.share
      : most.shorterWeld && length < most.shorterWeld.under
        ? most.shorterWeld.share
        : null;
  if (share === null) return null;
  const unit = sum === "count" ? "pores" : "mm";
  return `${Number((100 * share).toFixed(1))} % of ${withUnit(length, "mm")} = ${withUnit(value, unit)}`;
}

const summedText = ({ sum }: SumRule, { from, to, sum: total }: Window): string =>
  `${withUnit(total, sum === "count" ? "pores" : "mm")} between ${withUnit(from, "mm")} and ${withUnit(to, "mm")}`;
