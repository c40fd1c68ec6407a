import { type Interval, wilsonInterval } from "../../math";
import { stillNeeded } from "./enough";

/** So many out of so many, with Wilson's 95 % interval; null where there was nothing to count. */
export interface Share {
  readonly count: number;
  readonly of: number;
  readonly share: number | null;
  readonly interval: Interval | null;
  /** How many more observations it takes until the share says something; 0 if there are enough. */
  readonly needed: number;
}

export const shareOf = (count: number, of: number): Share => ({
  count,
  of,
  share: of === 0 ? null : count / of,
  interval: of === 0 ? null : wilsonInterval(count, of),
  needed: stillNeeded(of),
});
