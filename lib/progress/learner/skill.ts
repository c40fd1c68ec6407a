import { z } from "zod";
import { IMPERFECTION_TYPES, type ImperfectionType } from "../../imperfections";
import { type Interval, logistic, twoSidedZ } from "../../math";
import { stillNeeded } from "../statistics/enough";

const levelSchema = z.strictObject({
  /** Logits; 0 is a careful eye that looks at welds for the first time. */
  value: z.number(),
  /** Observations it rests on. */
  n: z.int().min(0),
  /** What these tell of it: the sum of p (1 - p), Fisher's information of a right or wrong answer. */
  information: z.number().min(0),
});
type Level = z.infer<typeof levelSchema>;

/** One skill of one learner on two levels: in general, and how much better or worse with each type. */
export const skillSchema = z.strictObject({
  general: levelSchema,
  types: z.partialRecord(z.enum(IMPERFECTION_TYPES as readonly [ImperfectionType, ...ImperfectionType[]]), levelSchema),
});
export type Skill = z.infer<typeof skillSchema>;

const NOTHING_KNOWN: Level = { value: 0, n: 0, information: 0 };
export const NEW_SKILL: Skill = { general: NOTHING_KNOWN, types: {} };

/** Step of an update at first and how it shrinks; common practice, no source (chosen on simulated learners). */
const STEP = { general: 0.6, type: 0.35, slower: 0.05 };
/** How far learners and types scatter before anything is known, logits; common practice, no source. */
const SCATTER = { general: 1.2, type: 0.7 };

const levelOf = (skill: Skill, type: ImperfectionType): Level => skill.types[type] ?? NOTHING_KNOWN;

/** Chance that the learner succeeds with a type at a difficulty, logits. */
export const chanceOf = (skill: Skill, type: ImperfectionType, difficulty: number): number =>
  logistic(skill.general.value + levelOf(skill, type).value - difficulty);

/**
 * The skill after one outcome, on two levels of an Elo rating (A. E. Elo 1978; several skills under one: R. Pelanek, Computers &
 * Education 98, 2016): p = logistic(G + S_k - b); G and S_k move towards the outcome by a step that shrinks with what was seen.
 * @param outcome 0 to 1: 1 is full success
 */
export function afterOutcome(skill: Skill, type: ImperfectionType, difficulty: number, outcome: number): Skill {
  const p = chanceOf(skill, type, difficulty);
  const move = (level: Level, step: number): Level => ({
    value: level.value + (step / (1 + STEP.slower * level.n)) * (outcome - p),
    n: level.n + 1,
    information: level.information + p * (1 - p),
  });
  return {
    general: move(skill.general, STEP.general),
    types: { ...skill.types, [type]: move(levelOf(skill, type), STEP.type) },
  };
}

/** How sure a skill is with one type. */
export interface Standing {
  readonly chance: number;
  /** About 95 %. */
  readonly interval: Interval;
  /** Observations of the type, and how many more until the chance says something; 0 if there are enough. */
  readonly observations: number;
  readonly needed: number;
}

/**
 * Chance with its uncertainty: the information of both levels added to what is taken of anybody, as a normal posterior would have
 * it.
 */
export function standingOf(skill: Skill, type: ImperfectionType, difficulty: number): Standing {
  const level = levelOf(skill, type);
  const error = Math.sqrt(
    1 / (1 / SCATTER.general ** 2 + skill.general.information) + 1 / (1 / SCATTER.type ** 2 + level.information),
  );
  const middle = skill.general.value + level.value - difficulty;
  const half = twoSidedZ(0.95) * error;
  return {
    chance: logistic(middle),
    interval: { low: logistic(middle - half), high: logistic(middle + half) },
    observations: level.n,
    needed: stillNeeded(level.n),
  };
}

/** How many observations of a type a skill rests on. */
export const timesSeen = (skill: Skill, type: ImperfectionType): number => levelOf(skill, type).n;
