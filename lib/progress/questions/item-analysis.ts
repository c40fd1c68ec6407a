import { type Interval, wilsonInterval } from "../../math";
import { stillNeeded } from "../statistics/enough";

/** One question put to several learners: what each chose, in the order of the learners. */
export interface AnsweredItem {
  readonly id: string;
  /** Position of the option that counts as right. */
  readonly key: number;
  /** How many options there are. */
  readonly options: number;
  /** Chosen option by learner; null where nothing was chosen, undefined where the question was not put. */
  readonly chosen: readonly (number | null | undefined)[];
  /** Learners for whom it was annulled: it says nothing of how well they know the rest. */
  readonly annulledFor?: ReadonlySet<number>;
}

/** How one option was chosen. */
export interface OptionCount {
  readonly option: number;
  readonly chosen: number;
  /** Among the best third by everything else they answered. */
  readonly chosenByBest: number;
}

/**
 * distractor-beats-key: the best third prefer a wrong option. negative: those who know the rest well do worse on it. Either is a
 * reason to look at the question, and none to change a mark.
 */
export type Suspicion = "distractor-beats-key" | "negative";

export interface ItemAnalysis {
  readonly id: string;
  /** To how many it was put. */
  readonly asked: number;
  readonly right: number;
  readonly blank: number;
  /** Share of right answers (p, "facility"), with Wilson's 95 % interval. */
  readonly facility: number;
  readonly facilityInterval: Interval;
  /** Corrected point-biserial: correlation of right or wrong with the share right of everything else; null where one of them never varies. */
  readonly discrimination: number | null;
  readonly optionCounts: readonly OptionCount[];
  readonly suspicions: readonly Suspicion[];
  readonly needed: number;
}

/** A negative correlation is suspected only beyond this, since it comes by chance; and only from so many learners on. Common practice, no source. */
const CLEARLY_NEGATIVE = -0.1;
const LEAST_LEARNERS = 9;

/**
 * Analyses questions by what the same learners answered (R. L. Ebel, Essentials of Educational Measurement, 1972; the correction is
 * that of a total without the question itself). Questions that were put to nobody are left out.
 */
export function analyseItems(items: readonly AnsweredItem[]): ItemAnalysis[] {
  return items.flatMap((item) => {
    const learners = item.chosen.flatMap((chosen, learner) =>
      chosen === undefined ? [] : [{ chosen, rest: shareRight(items, learner, item) }],
    );
    if (learners.length === 0) return [];
    const right = learners.filter(({ chosen }) => chosen === item.key).length;
    const discrimination = correlation(
      learners.flatMap(({ chosen, rest }) => (rest === null ? [] : [[Number(chosen === item.key), rest] as const])),
    );
    const best = bestThird(learners);
    const optionCounts = Array.from({ length: item.options }, (_, option) => ({
      option,
      chosen: learners.filter(({ chosen }) => chosen === option).length,
      chosenByBest: best.filter(({ chosen }) => chosen === option).length,
    }));
    return [
      {
        id: item.id,
        asked: learners.length,
        right,
        blank: learners.filter(({ chosen }) => chosen === null).length,
        facility: right / learners.length,
        facilityInterval: wilsonInterval(right, learners.length),
        discrimination,
        optionCounts,
        suspicions: suspicionsOf(item.key, learners.length, optionCounts, discrimination),
        needed: stillNeeded(learners.length),
      },
    ];
  });
}

function suspicionsOf(
  key: number,
  learners: number,
  counts: readonly OptionCount[],
  discrimination: number | null,
): Suspicion[] {
  if (learners < LEAST_LEARNERS) return [];
  const ofKey = counts[key].chosenByBest;
  const isBeaten = counts.some(({ option, chosenByBest }) => option !== key && chosenByBest > ofKey);
  const isNegative = discrimination !== null && discrimination < CLEARLY_NEGATIVE;
  return [...(isBeaten ? (["distractor-beats-key"] as const) : []), ...(isNegative ? (["negative"] as const) : [])];
}

/** Share right of all other questions that were put to a learner and count; null where there were none. */
function shareRight(items: readonly AnsweredItem[], learner: number, but: AnsweredItem): number | null {
  const others = items.filter(
    (item) => item !== but && item.chosen[learner] !== undefined && !item.annulledFor?.has(learner),
  );
  const right = others.filter((item) => item.chosen[learner] === item.key).length;
  return others.length === 0 ? null : right / others.length;
}

/** Those whose share of the rest is among the highest third; those who are equal to the last of them as well. */
function bestThird<Learner extends { readonly rest: number | null }>(learners: readonly Learner[]): Learner[] {
  const shares = learners.flatMap(({ rest }) => rest ?? []).sort((a, b) => b - a);
  const least = shares[Math.ceil(shares.length / 3) - 1];
  return learners.filter(({ rest }) => rest !== null && rest >= least);
}

/** Pearson's correlation; null where one side never varies. */
function correlation(pairs: readonly (readonly [number, number])[]): number | null {
  const mean = (side: 0 | 1) => pairs.reduce((sum, pair) => sum + pair[side], 0) / pairs.length;
  const [meanX, meanY] = [mean(0), mean(1)];
  let [xx, yy, xy] = [0, 0, 0];
  for (const [x, y] of pairs) {
    xx += (x - meanX) ** 2;
    yy += (y - meanY) ** 2;
    xy += (x - meanX) * (y - meanY);
  }
  return xx < 1e-12 || yy < 1e-12 ? null : xy / Math.sqrt(xx * yy);
}
