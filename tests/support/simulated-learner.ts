import { IMPERFECTION_TYPES, type ImperfectionType } from "../../lib/imperfections";
import { logistic } from "../../lib/math";
import { afterOutcome, afterPractice, type Candidate, type Learner, NEW_LEARNER } from "../../lib/progress";
import type { RandomStream } from "../../lib/random";

/** A made-up learner whose true chances are known: p = logistic(general + type - difficulty). */
export interface SimulatedLearner {
  readonly general: number;
  readonly types: ReadonlyMap<ImperfectionType, number>;
}

export function drawLearner(random: RandomStream, types: readonly ImperfectionType[]): SimulatedLearner {
  return {
    general: random.normal(0.6, 0.9),
    types: new Map(types.map((type) => [type, random.normal(0, 0.6)])),
  };
}

/** So many types, spread over the catalogue. */
export const typesOf = (count: number): ImperfectionType[] =>
  Array.from({ length: count }, (_, n) => IMPERFECTION_TYPES[Math.floor((n * IMPERFECTION_TYPES.length) / count)]);

export const trueChance = ({ general, types }: SimulatedLearner, type: ImperfectionType, difficulty: number): number =>
  logistic(general + (types.get(type) ?? 0) - difficulty);

/** A piece with so many imperfections of at most four types, harder or easier as a whole. */
export function drawCandidate(random: RandomStream, id: string, types: readonly ImperfectionType[]): Candidate {
  const among = Array.from({ length: 4 }, () => random.pick(types));
  const middle = random.uniform(-3, 2.5);
  return {
    id,
    indications: Array.from({ length: 8 }, () => ({
      type: random.pick(among),
      difficulty: middle + random.normal(0, 0.8),
    })),
  };
}

/** The learner after a piece, found by their true chances; and what was found. */
export function practise(
  known: Learner,
  learner: SimulatedLearner,
  { indications }: Candidate,
  at: number,
  random: RandomStream,
): { readonly learner: Learner; readonly finds: number } {
  let found = known.found;
  let finds = 0;
  const due = { ...known.due };
  const types = [...new Set(indications.map(({ type }) => type))];
  const outcomes = indications.map(({ type, difficulty }) => {
    const outcome = Number(random.chance(trueChance(learner, type, difficulty)));
    found = afterOutcome(found, type, difficulty, outcome);
    finds += outcome;
    return { type, outcome };
  });
  for (const type of types) {
    const own = outcomes.filter((one) => one.type === type);
    due[type] = afterPractice(due[type], own.reduce((sum, { outcome }) => sum + outcome, 0) / own.length, at);
  }
  return { learner: { ...NEW_LEARNER, found, due, recent: [...known.recent, types].slice(-10) }, finds };
}
