import { CLUTTER, type Clutter } from "../../imperfections";
import { clusterSpread, effectiveShare, type Interval, poissonInterval } from "../../math";
import type { PieceTally } from "../tallies/piece-tally";
import { CALL_NAMES, type CallName, type TypeTallies } from "../tallies/type-tally";
import { clusteredShare, type Share, shareOf } from "./share";

/** How often something is called where nothing is to be called. */
export interface FalseCallRate {
  readonly count: number;
  readonly metres: number;
  /**
   * Per metre of weld looked at, with the exact 95 % interval of a Poisson count, of several learners with the effective count;
   * null where no weld was looked at.
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

/** @param byLearner the same learner by learner, where it is of several */
export function falseCallRate(
  pieces: FalseCallCounts,
  byLearner: readonly FalseCallCounts[] = [pieces],
): FalseCallRate {
  const { falseCalls: count, weldLength, clutter, falseCallsOn } = pieces;
  const metres = weldLength / 1e6;
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
              called: clusteredShare(
                byLearner.map((own) => ({
                  count: own.clutter[kind]?.called ?? 0,
                  of: own.clutter[kind]?.total ?? 0,
                })),
              ),
            },
          ]
        : [],
    ).sort((a, b) => b.called.count - a.called.count),
    onNothing: falseCallsOn.nothing ?? 0,
    cleanPieces: clusteredShare(byLearner.map(({ cleanCalled, clean }) => ({ count: cleanCalled, of: clean }))),
  };
}

/** Some call far more often than others: J. N. K. Rao and A. J. Scott, Statistics in Medicine 18, 1999, for counts that scatter so. */
function rateInterval(count: number, metres: number, byLearner: readonly FalseCallCounts[]): Interval {
  const spread = clusterSpread(byLearner.map((own) => ({ sum: own.falseCalls, size: own.weldLength / 1e6 })));
  const counting = spread && count > 0 ? effectiveShare(spread, count / metres ** 2) : 1;
  const { low, high } = poissonInterval(count * counting);
  return { low: low / metres / counting, high: high / metres / counting };
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
