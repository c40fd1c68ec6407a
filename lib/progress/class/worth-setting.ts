import type { ImperfectionType } from "../../imperfections";
import type { Share } from "../statistics/share";
import type { MissedType } from "./missed-types";
import { isMissedOften } from "./to-teach";

/** A type that a class misses, to be set on a piece. */
export interface ToSet {
  readonly type: ImperfectionType;
  readonly found: Share;
  /** Whether enough is known of it to advise it. */
  readonly isAdvised: boolean;
}

/** So many are offered, and so many advised: with more on one piece there is little left that nobody foresees. Common practice, no source. */
const MOST = { offered: 12, advised: 6 };

/** What a class misses, to choose from for a paper: of its types in the order of `missedTypes` the first that anybody missed. */
export function worthSetting(missed: readonly MissedType[]): ToSet[] {
  const offered = missed.filter(({ found }) => found.count < found.of).slice(0, MOST.offered);
  const advised = offered.filter(isMissedOften).slice(0, MOST.advised);
  return offered.map((one) => ({ type: one.type, found: one.found, isAdvised: advised.includes(one) }));
}
