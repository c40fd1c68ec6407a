import { type ImperfectionType, likeness } from "../../imperfections";
import { dueness } from "./due";
import type { Learner } from "./learner";
import { chanceOf, timesSeen } from "./skill";

/** One imperfection that a piece would have. */
export interface CandidateIndication {
  readonly type: ImperfectionType;
  /** Logits, as the generator expects it. */
  readonly difficulty: number;
}

/** A piece that could come next. One without indications is clean. */
export interface Candidate {
  readonly id: string;
  readonly indications: readonly CandidateIndication[];
}

/** Two types that are easily taken for each other. */
export type LookAlikes = readonly [ImperfectionType, ImperfectionType];

/** What speaks for a piece, each as a mean over its indications from 0 on. */
export interface Merits {
  /** Little is known of how the learner does with them. */
  readonly uncertainty: number;
  /** They are found too seldom. */
  readonly weakness: number;
  readonly due: number;
  /** Types that look alike are both there. */
  readonly lookAlikes: number;
  /** Types that were not on the last piece. */
  readonly change: number;
  /** While the learner warms up: there is much to find. */
  readonly density: number;
}

export interface Appraisal {
  readonly candidate: Candidate;
  /** Mean chance to find, 0 to 1; null for a clean piece. */
  readonly meanChance: number | null;
  readonly types: readonly ImperfectionType[];
  readonly newTypes: readonly ImperfectionType[];
  readonly pair: LookAlikes | null;
  readonly merits: Merits;
  readonly score: number;
}

/** What weighs how much; common practice, no source (chosen on simulated learners). */
const WEIGHTS: Readonly<Record<keyof Merits, number>> = {
  uncertainty: 0.5,
  weakness: 2,
  due: 0.5,
  lookAlikes: 0.15,
  change: 0.15,
  density: 0.5,
};
/** So many first pieces warm up: they are never clean, and have much to find. */
export const WARM_UP = 3;
/** So many indications are much. */
const DENSE = 12;
/** Chance to find that is aimed at with every type. */
export const AIM = 0.85;
/** So many observations halve what is uncertain of a type. */
const HALVED_BY = 5;

/** How the learner would do on a piece, and what speaks for it. */
export function appraise(learner: Learner, candidate: Candidate, now: number): Appraisal {
  const { indications } = candidate;
  const types = [...new Set(indications.map(({ type }) => type))];
  const last = learner.recent.at(-1) ?? [];
  const mean = (of: (indication: CandidateIndication) => number): number =>
    indications.length === 0 ? 0 : indications.reduce((sum, one) => sum + of(one), 0) / indications.length;
  const chance = ({ type, difficulty }: CandidateIndication) => chanceOf(learner.found, type, difficulty);
  const pair = pairAmong(types);
  const merits: Merits = {
    uncertainty: mean(({ type }) => HALVED_BY / (HALVED_BY + timesSeen(learner.found, type))),
    weakness: mean(({ type }) => weaknessWith(learner, type)),
    due: mean(({ type }) => dueness(learner.due[type], now)) / 2,
    lookAlikes: pair ? 1 : 0,
    change: mean(({ type }) => Number(!last.includes(type))),
    density: learner.recent.length < WARM_UP ? Math.min(1, indications.length / DENSE) : 0,
  };
  const score = (Object.keys(WEIGHTS) as (keyof Merits)[]).reduce((sum, key) => sum + WEIGHTS[key] * merits[key], 0);
  return {
    candidate,
    meanChance: indications.length === 0 ? null : mean(chance),
    types,
    newTypes: types.filter((type) => timesSeen(learner.found, type) === 0),
    pair,
    merits,
    score,
  };
}

/** What is missing to `AIM` with a type at the difficulty at which the learner's general skill would find four of five. */
export function weaknessWith(learner: Learner, type: ImperfectionType): number {
  const usual = learner.found.general.value - Math.log(0.8 / 0.2);
  return Math.max(0, AIM - chanceOf(learner.found, type, usual));
}

function pairAmong(types: readonly ImperfectionType[]): LookAlikes | null {
  for (const [n, one] of types.entries()) {
    const other = types.slice(n + 1).find((type) => likeness(one, type) === 0.5);
    if (other) return [one, other];
  }
  return null;
}

/** What counts for most of a score, but for some. */
export function chiefMerit({ merits }: Appraisal, but: readonly (keyof Merits)[]): keyof Merits {
  const keys = (Object.keys(WEIGHTS) as (keyof Merits)[]).filter((key) => !but.includes(key));
  return keys.reduce((best, key) => (WEIGHTS[key] * merits[key] > WEIGHTS[best] * merits[best] ? key : best));
}
