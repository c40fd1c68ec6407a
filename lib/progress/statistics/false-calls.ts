import { CLUTTER, type Clutter } from "../../imperfections";
import { clusterSpread, effectiveShare, type Interval, poissonInterval, shareForFew } from "../../math";
import type { PieceTally } from "../tallies/piece-tally";
import { CALL_NAMES, type CallName, type TypeTallies } from "../tallies/type-tally";
import { clusteredShare, type Share, shareOf } from "./share";

/** How often something is called where nothing is to be called. */
export interface FalseCallRate {
  readonly count: number;
  readonly metres: number;
  /**
   * Per metre of weld looked at, with the exact 95 % interval of a Poisson count, of a class with the effective count;
   * null where no weld was looked at, the interval also of a class of one.
   */
  readonly perMetre: number | null;
  readonly interval: Interval | null;
  /** Clutter by kind, what is most often taken for an imperfection first: how many were called of how many. */
  readonly on: readonly { readonly kind: Clutter; readonly called: Share }[];
  /** Those where not even clutter lies. */
  readonly onNothing: number;
  /** Of the pieces without anything to find, those with a false call. */
  readonly cleanPieces: Share;
}

/** Calls where nothing is to be called. */
export interface FalseCalls extends FalseCallRate {
  /** What they were called, most often first. */
  readonly as: readonly { readonly name: CallName; readonly count: number }[];
  /** Of the features that are too small to record, those that were called; it costs nothing. */
  readonly neutral: Share;
}

/** What a rate of false calls is worked out from. */
export type FalseCallCounts = Pick<
  PieceTally,
  "falseCalls" | "weldLength" | "clutter" | "falseCallsOn" | "clean" | "cleanCalled"
>;

/** @param byLearner the same learner by learner, where it is of a class */
export function falseCallRate(pieces: FalseCallCounts, byLearner?: readonly FalseCallCounts[]): FalseCallRate {
  const { falseCalls: count, weldLength, clutter, falseCallsOn } = pieces;
  const metres = weldLength / 1e6;
  const shareBy = (counted: (own: FalseCallCounts) => { count: number; of: number }): Share => {
    if (byLearner) return clusteredShare(byLearner.map(counted));
    const { count, of } = counted(pieces);
    return shareOf(count, of);
  };
  return {
    count,
    metres,
    perMetre: metres === 0 ? null : count / metres,
    interval: metres === 0 ? null : rateInterval(count, metres, byLearner),
    on: CLUTTER.flatMap((kind) =>
      clutter[kind]
        ? [
            {
              kind,
              called: shareBy((own) => ({ count: own.clutter[kind]?.called ?? 0, of: own.clutter[kind]?.total ?? 0 })),
            },
          ]
        : [],
    ).sort((a, b) => b.called.count - a.called.count),
    onNothing: falseCallsOn.nothing ?? 0,
    cleanPieces: shareBy(({ cleanCalled, clean }) => ({ count: cleanCalled, of: clean })),
  };
}

/** By how much of their mean learners' rates are taken to differ (standard deviation) where they cannot tell. Common practice, no source. */
const APART = 0.5;
/** Of fewer calls it cannot be seen how learners differ. Common practice, no source. */
const TELLING = 5;

/**
 * Some call far more often than others: J. N. K. Rao and A. J. Scott, Statistics in Medicine 18, 1999, for counts that scatter so.
 * Null of a class of one: one learner says nothing about the others, and a range that allows for them would hold every rate there is.
 */
function rateInterval(count: number, metres: number, byLearner?: readonly FalseCallCounts[]): Interval | null {
  const counting = byLearner ? countingOf(count, metres, byLearner) : 1;
  if (counting === null) return null;
  const { low, high } = poissonInterval(count * counting);
  return { low: low / metres / counting, high: high / metres / counting };
}

/**
 * What share of the calls of a class counts. Null where one learner alone has any weld. Where there are few or none it is at most what
 * learners assumed to differ leave of it: counts whose rates differ scatter 1 + APART^2 m times as much as Poisson's, m being the
 * mean count of a learner (the negative binomial distribution), and m as large as it may be by Poisson's interval.
 */
function countingOf(count: number, metres: number, byLearner: readonly FalseCallCounts[]): number | null {
  const clusters = byLearner.map((own) => ({ sum: own.falseCalls, size: own.weldLength / 1e6 }));
  const spread = clusterSpread(clusters);
  if (spread === null) return null;
  const { degrees, meanSize } = spread;
  const assumed = 1 / (1 + APART ** 2 * (poissonInterval(count).high / metres) * meanSize);
  const seen = count > 0 ? effectiveShare(spread, count / metres ** 2) : 1;
  const isTelling = count >= Math.max(TELLING, clusters.filter(({ size }) => size > 0).length);
  return (isTelling ? seen : Math.min(seen, assumed)) * shareForFew({ degrees });
}

export function falseCallsOf(pieces: PieceTally, types: TypeTallies): FalseCalls {
  const { falseCallsAs } = pieces;
  const sum = (part: "neutral" | "neutralCalled") =>
    Object.values(types).reduce((total, tally) => total + tally[part], 0);
  return {
    ...falseCallRate(pieces),
    as: CALL_NAMES.flatMap((name) => {
      const times = falseCallsAs[name];
      return times ? [{ name, count: times }] : [];
    }).sort((a, b) => b.count - a.count),
    neutral: shareOf(sum("neutralCalled"), sum("neutral")),
  };
}
