import type { Mm } from "../math";
import type { SectionRule } from "./criteria";
import { exceeds, withUnit } from "./figures";
import type { Finding } from "./finding";
import { describeFormula, workOut } from "./formula";
import type { Indication, Piece } from "./indication";
import { findingOf, symbolMissing } from "./judge-one";
import type { Summed } from "./judge-sums";

const RULES = {
  "not-permitted": "no two of them in one cross section",
  "not-known": "limit of this edition not known here",
};

/** In words: "sum of h ≤ 0.25 t, at most 3 mm". */
export const describeSectionRule = ({ most }: SectionRule): string =>
  most.kind === "at-most" ? `sum of h ≤ ${describeFormula(most.formula)}` : RULES[most.kind];

/** What a rule about single cross sections comes to; an indication with no other in any of its sections is left out. */
export function judgeSections(rule: SectionRule, indications: readonly Indication[], piece: Piece): Summed[] {
  const shared = sharedSections(indications);
  if (shared.length === 0) return [];
  const blank = findingOf(rule, describeSectionRule(rule));
  const judged = shared.map(({ at, together }) => ({
    at,
    together,
    finding: judgeSection(rule, blank, at, together, piece),
  }));
  const worstOf = (sections: typeof judged) =>
    sections.find(({ finding }) => finding.outcome === "reject") ??
    sections.find(({ finding }) => finding.outcome !== "accept") ??
    sections.reduce((most, next) => ((next.finding.found ?? 0) > (most.finding.found ?? 0) ? next : most));
  const ofEach = indications.flatMap((indication) => {
    const own = judged.filter(({ together }) => together.includes(indication));
    return own.length === 0 ? [] : [{ indication, finding: worstOf(own).finding }];
  });
  return [{ whole: worstOf(judged).finding, ofEach }];
}

/** The sections in which most of them lie: at their starts, and only where there are two at the least. */
function sharedSections(indications: readonly Indication[]): { at: Mm; together: Indication[] }[] {
  return [...new Set(indications.map(({ start }) => start))]
    .map((at) => ({ at, together: indications.filter(({ start, end }) => start <= at && end >= at) }))
    .filter(({ together }) => together.length > 1);
}

function judgeSection(
  { most }: SectionRule,
  blank: Finding,
  at: Mm,
  together: readonly Indication[],
  piece: Piece,
): Finding {
  const cannot = (reason: "not-known" | "missing-measure", why: string): Finding => ({
    ...blank,
    outcome: "cannot-be-judged",
    reason,
    why,
  });
  if (most.kind === "not-known") return cannot("not-known", "the document has a limit that is not known here");
  const depths = together.map(({ measured }) => measured.depth);
  const sum = depths.reduce<number>((total, depth) => total + (depth ?? 0), 0);
  const window = { from: at, to: at, sum };
  const there = {
    found: sum,
    foundText: `${together.length} together ${withUnit(sum, "mm")} at ${withUnit(at, "mm")}`,
    window,
  };
  if (most.kind === "not-permitted") return { ...blank, ...there, outcome: "reject" };
  const worked = workOut(most.formula, piece.values);
  if (!("value" in worked)) return cannot("missing-measure", symbolMissing(worked.missing));
  const numbers = { ...there, limit: worked.value, worked: worked.text };
  if (exceeds(sum, worked.value)) return { ...blank, ...numbers, outcome: "reject" };
  return depths.includes(undefined)
    ? { ...cannot("missing-measure", "not all of their depths are measured"), ...numbers }
    : { ...blank, ...numbers };
}
