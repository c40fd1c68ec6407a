import type { SectionResult } from "../../results";
import { type ReviewAct, reviewed } from "../../review";
import { type MarkDistribution, markDistribution } from "../marks/distribution";
import { partScores } from "../marks/part-scores";
import { analyseItems, type ItemAnalysis } from "../questions/item-analysis";
import { itemsOf, type SharedItem } from "../questions/items-of";
import { type PooledQuestion, withPooled } from "../questions/pooled";
import { type Reliability, reliabilityOf } from "../questions/reliability";

/** Questions that fewer were asked say nothing of themselves. Common practice, no source. */
export const ASKED_FROM = 3;

/** One section as somebody handed it in. */
export interface HandedInSection {
  readonly practiceId: string;
  readonly shown: number;
  readonly passed: boolean;
  /** As it was marked at hand-in, and what tutors said to it since. */
  readonly result: SectionResult;
  readonly acts: readonly ReviewAct[];
}

/** A question with what it tells, and where it was asked. */
export interface AnalysedItem extends ItemAnalysis {
  readonly item: SharedItem;
  /** For how many of those whom it was put to a tutor annulled it. */
  readonly annulled: number;
  /** The first practice that it was asked in. */
  readonly practiceId: string;
}

/** How a section works that several handed in. */
export interface SectionAnalysis {
  readonly marks: MarkDistribution;
  /** Of its parts as they count, over the largest number that were asked the same parts; null below two sections or two parts. */
  readonly reliability: Reliability | null;
  /** Of its questions: suspect ones that count for anybody first, then those that were annulled, then those most often answered wrong. */
  readonly items: readonly AnalysedItem[];
  /** Questions that were asked fewer than `ASKED_FROM` times and are not among them. */
  readonly askedSeldom: number;
  /** Answers of people who were erased since, among those to these questions. */
  readonly pooled: number;
}

/** `pool`: how the same questions were answered by people of whom nothing else is kept. */
export function analyseSection(
  sections: readonly HandedInSection[],
  pool: ReadonlyMap<string, PooledQuestion> = new Map(),
): SectionAnalysis {
  const reviews = sections.map(({ result, acts }) => reviewed(result, acts));
  const own = itemsOf(
    reviews.map(({ base }) => base.questions?.lines ?? []),
    reviews.map(({ standing }) => new Set(standing.annulled.keys())),
  );
  const items = withPooled(own, pool);
  const byId = new Map(items.map((item) => [item.id, item]));
  const analysed = analyseItems(items).flatMap((analysis): AnalysedItem[] => {
    const item = byId.get(analysis.id);
    const first = item?.chosen.findIndex((chosen) => chosen !== undefined) ?? -1;
    if (!item || first < 0 || analysis.asked < ASKED_FROM) return [];
    return [{ ...analysis, item, annulled: item.annulledFor.size, practiceId: sections[first].practiceId }];
  });
  return {
    marks: markDistribution(sections),
    reliability: reliabilityOfParts(reviews.map(partScores)),
    items: analysed.sort(
      (a, b) =>
        rank(b, sections.length) - rank(a, sections.length) || a.facility - b.facility || (a.id < b.id ? -1 : 1),
    ),
    askedSeldom: items.length - analysed.length,
    pooled: own.reduce((sum, { id }) => sum + answersIn(pool.get(id)), 0),
  };
}

/**
 * What is to be looked at goes before what was, and that before what nothing is wrong with. Annulled for some, a question still
 * counts for the others.
 * @param sections how many are at hand: answers behind them are of the pool
 */
function rank({ annulled, suspicions, item }: AnalysedItem, sections: number): number {
  const asked = item.chosen.slice(0, sections).filter((chosen) => chosen !== undefined).length;
  return annulled === asked ? 0.5 : Math.max(suspicions.length, annulled > 0 ? 0.5 : 0);
}

const answersIn = (pooled: PooledQuestion | undefined): number =>
  pooled ? pooled.chosen.reduce((sum, times) => sum + times, pooled.blank) : 0;

/** Sections that asked other parts are another test: the test that most sat is taken. */
function reliabilityOfParts(scores: readonly (readonly (number | null)[])[]): Reliability | null {
  const byTest = new Map<string, number[][]>();
  for (const score of scores) {
    const test = score.map((part) => Number(part !== null)).join("");
    byTest.set(test, [...(byTest.get(test) ?? []), score.filter((part) => part !== null)]);
  }
  const [largest] = [...byTest.values()].sort((a, b) => b.length - a.length);
  return largest && largest.length >= 2 && largest[0].length >= 2 ? reliabilityOf(largest) : null;
}
