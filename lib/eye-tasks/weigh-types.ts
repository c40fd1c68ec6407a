import { EYE_TYPES } from "../eye";
import { type ImperfectionType, isImperfectionType, likeness } from "../imperfections";
import type { Overview } from "../progress";

/** What a round is after. */
export interface Aims {
  /** How often a type comes beside another. */
  readonly weight: (type: ImperfectionType) => number;
  /** 1 for what the learner finds and names every time, more for what they do not. */
  readonly need: (type: ImperfectionType) => number;
  /** What most of the round is about, if a tutor has set that. */
  readonly set: readonly ImperfectionType[];
  /** A type that the learner has never met. */
  readonly isNew: (type: ImperfectionType) => boolean;
}

/** Common practice, no source. */
const WEIGHTS = {
  /** Beside 1 of what is found and named every time: so much more where all is missed, and where all is called something else. */
  missed: 4,
  misnamed: 3,
  /** What is taken for something that a tutor has set. */
  alike: 3,
} as const;
/** Fewer of a type than this say more of chance than of the learner. */
const JUDGED_FROM = 3;
/** Who has met fewer types than this is at the beginning: then all are new, and none is held back. */
const BEGUN_FROM = 5;

/** By what a learner misses and what they call it, and by what a tutor set. */
export function aimsOf({ types }: Pick<Overview, "types">, set: readonly ImperfectionType[]): Aims {
  const met = Object.keys(types).filter(isImperfectionType);
  const own = (type: ImperfectionType): number => {
    const counts = types[type];
    if (!counts || counts.total < JUDGED_FROM) return 1;
    const missed = 1 - counts.found / counts.total;
    const misnamed = counts.found === 0 ? 0 : 1 - counts.namedRight / counts.found;
    return 1 + WEIGHTS.missed * missed + WEIGHTS.misnamed * misnamed;
  };
  const isAlike = (type: ImperfectionType) => set.some((one) => one !== type && likeness(one, type) > 0);
  return {
    need: own,
    weight: (type) => own(type) * (isAlike(type) ? WEIGHTS.alike : 1),
    set,
    isNew: (type) => met.length >= BEGUN_FROM && !met.includes(type) && !set.includes(type),
  };
}

/** So many of what somebody misses most are wanted on pieces to come. */
const MOST_WANTED = 3;
/** What is missed or misnamed less than this needs no piece of its own. */
const WORTH_A_PIECE = 2;

/** What pieces for drills should have: what is set, and what is missed or misnamed most. */
export function wantedFor({ set, need }: Aims): readonly ImperfectionType[] {
  const weak = EYE_TYPES.filter((type) => need(type) >= WORTH_A_PIECE).toSorted((a, b) => need(b) - need(a));
  return [...new Set([...set, ...weak.slice(0, MOST_WANTED)])];
}
