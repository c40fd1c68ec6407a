import { IMPERFECTION_TYPES, type ImperfectionType } from "../../imperfections";
import { wilsonInterval } from "../../math";
import type { TypeParts } from "../tallies/type-tally";
import { type Share, shareOf } from "./share";

/** How one type of imperfection is found and named. */
export interface TypeDetection {
  readonly type: ImperfectionType;
  readonly found: Share;
  /** Of the finds, those that were named exactly; and those that were named exactly or as something alike. */
  readonly named: Share;
  readonly namedAlike: Share;
}

/**
 * Found of all by type, what is most surely missed first: by the lower end of the interval of the share missed, so that one miss
 * out of one does not come before twelve out of twenty. Types that never came are left out; equals stand in catalogue order.
 */
export function detectionByType(types: TypeParts<"total" | "found" | "namedRight" | "namedAlike">): TypeDetection[] {
  return IMPERFECTION_TYPES.flatMap((type) => {
    const tally = types[type];
    if (!tally || tally.total === 0) return [];
    const { total, found, namedRight, namedAlike } = tally;
    const row = {
      type,
      found: shareOf(found, total),
      named: shareOf(namedRight, found),
      namedAlike: shareOf(namedRight + namedAlike, found),
    };
    return { row, missed: wilsonInterval(total - found, total).low };
  })
    .sort((a, b) => b.missed - a.missed)
    .map(({ row }) => row);
}
