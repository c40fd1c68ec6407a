import { CLUTTER, type Clutter } from "../../imperfections";
import { type Interval, poissonInterval } from "../../math";
import type { PieceTally } from "../tallies/piece-tally";
import { CALL_NAMES, type CallName, type TypeTallies } from "../tallies/type-tally";
import { type Share, shareOf } from "./share";

/** How often something is called where nothing is to be called. */
export interface FalseCallRate {
  readonly count: number;
  readonly metres: number;
  /** Per metre of weld looked at, with the exact 95 % interval of a Poisson count; null where no weld was looked at. */
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

export function falseCallRate(pieces: FalseCallCounts): FalseCallRate {
  const { falseCalls: count, weldLength, clutter, falseCallsOn } = pieces;
  const metres = weldLength / 1e6;
  const bounds = poissonInterval(count);
  return {
    count,
    metres,
    perMetre: metres === 0 ? null : count / metres,
    interval: metres === 0 ? null : { low: bounds.low / metres, high: bounds.high / metres },
    on: CLUTTER.flatMap((kind) => {
      const tally = clutter[kind];
      return tally ? [{ kind, called: shareOf(tally.called, tally.total) }] : [];
    }).sort((a, b) => b.called.count - a.called.count),
    onNothing: falseCallsOn.nothing ?? 0,
    cleanPieces: shareOf(pieces.cleanCalled, pieces.clean),
  };
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
