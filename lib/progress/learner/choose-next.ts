import type { ImperfectionType } from "../../imperfections";
import {
  type Appraisal,
  appraise,
  type Candidate,
  chiefMerit,
  type LookAlikes,
  WARM_UP,
  weaknessWith,
} from "./candidate";
import { dueness } from "./due";
import type { Learner } from "./learner";
import { timesSeen } from "./skill";

/**
 * Why a piece was chosen, for one sentence on it. It tells what is on the piece: nobody may read it before the piece is handed in.
 * What may be said before is `practiceAims`.
 */
export type Reason =
  | { readonly kind: "clean" }
  | { readonly kind: "warm-up" }
  | { readonly kind: "new"; readonly types: readonly ImperfectionType[] }
  | { readonly kind: "weak"; readonly type: ImperfectionType }
  | { readonly kind: "due"; readonly type: ImperfectionType }
  | { readonly kind: "look-alikes"; readonly pair: LookAlikes }
  | { readonly kind: "uncertain"; readonly type: ImperfectionType }
  | { readonly kind: "change" };

export interface Choice {
  readonly candidate: Candidate;
  readonly reason: Reason;
  /** Mean chance to find; null on a clean piece. */
  readonly meanChance: number | null;
  /** False where no candidate met all conditions and the nearest to them was taken. */
  readonly isFitting: boolean;
}

/** Conditions on what comes next; common practice, no source. */
export const NEXT = {
  /** Mean chance to find. */
  chance: { low: 0.75, high: 0.88 },
  /** Types that the learner never met. */
  mostNew: 2,
  /** Share of clean pieces among the last ones, and the chance of one within it and under it: never sure, or one could count on it. */
  clean: { low: 0.15, high: 0.3, usual: 0.22, whereFew: 0.5 },
} as const;

/**
 * Chooses the next piece among 20 to 50 candidates: whether a clean one by the share of clean ones among the last pieces, otherwise
 * what scores highest among those that the learner finds 75 to 88 % of and that have at most two types new to them. If none meets
 * both, the one nearest to them is taken. There is at least one candidate; a clean one only if some are clean.
 * @param draw 0 up to 1, so that nobody can work out when a clean piece comes
 * @param now milliseconds since 1970
 */
export function chooseNext(learner: Learner, candidates: readonly Candidate[], draw: number, now: number): Choice {
  const clean = candidates.find(({ indications }) => indications.length === 0);
  const marked = candidates.filter(({ indications }) => indications.length > 0);
  if (clean && (marked.length === 0 || isCleanNext(learner, draw))) {
    return { candidate: clean, reason: { kind: "clean" }, meanChance: null, isFitting: isCleanNext(learner, draw) };
  }
  const appraisals = marked.map((candidate) => appraise(learner, candidate, now));
  const least = Math.min(...appraisals.map(missBy));
  const best = appraisals
    .filter((appraisal) => missBy(appraisal) <= least + 1e-9)
    .reduce((one, other) => (other.score > one.score ? other : one));
  return {
    candidate: best.candidate,
    reason: reasonFor(learner, best, now),
    meanChance: best.meanChance,
    isFitting: least === 0,
  };
}

/** By how much a piece misses the conditions: 0 if it meets them; a new type too many counts as 10 % of chance. */
function missBy({ meanChance, newTypes }: Appraisal): number {
  const { low, high } = NEXT.chance;
  const chance = meanChance ?? low;
  return Math.max(0, low - chance, chance - high) + 0.1 * Math.max(0, newTypes.length - NEXT.mostNew);
}

function isCleanNext({ recent }: Learner, draw: number): boolean {
  const { low, high, usual, whereFew } = NEXT.clean;
  if (recent.length < WARM_UP) return false;
  const count = recent.filter((types) => types.length === 0).length;
  const pieces = recent.length + 1;
  if ((count + 1) / pieces > high) return false;
  return draw < (count / pieces < low && recent.length >= 6 ? whereFew : usual);
}

/**
 * Why a piece was right for a learner as they were known when it was chosen, by what there really is on it.
 * @param now when it was chosen, milliseconds since 1970
 */
export const reasonOf = (learner: Learner, candidate: Candidate, now: number): Reason =>
  candidate.indications.length === 0 ? { kind: "clean" } : reasonFor(learner, appraise(learner, candidate, now), now);

function reasonFor(learner: Learner, appraisal: Appraisal, now: number): Reason {
  const { types, newTypes, pair } = appraisal;
  if (learner.found.general.n === 0) return { kind: "warm-up" };
  const weak = types.filter((type) => isWeak(learner, type));
  const most = (of: (type: ImperfectionType) => number, among = types): ImperfectionType =>
    among.reduce((one, other) => (of(other) > of(one) ? other : one));
  switch (chiefMerit(appraisal, weak.length > 0 ? [] : ["weakness"])) {
    case "weakness":
      return { kind: "weak", type: most((type) => weaknessWith(learner, type), weak) };
    case "due":
      return { kind: "due", type: most((type) => dueness(learner.due[type], now)) };
    case "lookAlikes":
      return pair ? { kind: "look-alikes", pair } : { kind: "change" };
    case "uncertainty":
      return newTypes.length > 0
        ? { kind: "new", types: newTypes }
        : { kind: "uncertain", type: most((type) => -timesSeen(learner.found, type)) };
    case "density":
      return { kind: "warm-up" };
    case "change":
      return { kind: "change" };
  }
}

/** What a learner's practice is after, whatever the next piece has: this may be read before it, since it says nothing of the piece. */
export interface PracticeAims {
  /** Types that are found too seldom, the weakest first. */
  readonly weak: readonly ImperfectionType[];
  /** Types whose day has come, the longest overdue first. */
  readonly due: readonly ImperfectionType[];
  /** Observations so far. */
  readonly observations: number;
}

/** A weakness is worth saying from this on, and once a type was met so often: before, chance says more than the learner. */
const WEAK = { from: 0.05, met: 3 };
/** So many types of each are told. */
const TOLD = 3;

const isWeak = (learner: Learner, type: ImperfectionType): boolean =>
  weaknessWith(learner, type) > WEAK.from && timesSeen(learner.found, type) >= WEAK.met;

export function practiceAims(learner: Learner, now: number): PracticeAims {
  const met = Object.keys(learner.found.types) as ImperfectionType[];
  const first = (of: (type: ImperfectionType) => number, among: readonly ImperfectionType[]) =>
    among.toSorted((a, b) => of(b) - of(a)).slice(0, TOLD);
  return {
    weak: first(
      (type) => weaknessWith(learner, type),
      met.filter((type) => isWeak(learner, type)),
    ),
    due: first(
      (type) => dueness(learner.due[type], now),
      met.filter((type) => dueness(learner.due[type], now) > 0),
    ),
    observations: learner.found.general.n,
  };
}
