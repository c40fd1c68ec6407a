import {
  type Criteria,
  type Criterion,
  describeSumRule,
  mostOn,
  SHORT_IMPERFECTION,
  type SumRule,
} from "../../criteria";
import type { RandomStream } from "../../random";
import { PIECES } from "../../weld";
import type { Material } from "../kind";
import { clearRow, decidingSymbols, type OnFace, possible, valuesFor, valueWords } from "./clear-row";

/** What the lengths of one type may add up to by a row with one such rule. */
interface Summed extends OnFace {
  readonly row: Criterion;
  readonly window: number;
  /** mm on the weld of the piece. */
  readonly most: number;
  /** What the rows go by, with its values. */
  readonly given: string;
  readonly rule: string;
}

const rulesOf = ({ limit, sums }: Criterion): readonly SumRule[] =>
  limit.kind === "at-most" && limit.shortOnly ? [SHORT_IMPERFECTION, ...sums] : sums;

/** One of the rules of a set on summed lengths in a stretch of the weld, or null where it has none that is clear. */
export function drawSummed({ criteria, truth }: Material, random: RandomStream): Summed | null {
  const values = valuesFor(truth, random);
  const { length } = PIECES[truth.joint.kind];
  const all = possible(truth).flatMap((on): Summed[] => {
    const row = clearRow(criteria, on.type, on.face, values);
    const rules = row ? rulesOf(row) : [];
    const [rule] = rules;
    if (!row || rules.length !== 1 || rule.sum !== "length" || rule.window === undefined || rule.counted) return [];
    if (rule.window > length) return [];
    return [
      {
        ...on,
        row,
        window: rule.window,
        most: mostOn(rule, length),
        given: valueWords(values, decidingSymbols(criteria, on.type)),
        rule: describeSumRule(rule),
      },
    ];
  });
  return all.length === 0 ? null : random.pick(all);
}

export const ruleWords = (criteria: Criteria, { row, rule }: Summed): string =>
  `${criteria.edition}, ${row.clause} ${row.name}: ${rule}`;
