import type { ImperfectionType } from "@/lib/imperfections";

/** How a simulated inspector looks, measures and decides. */
export interface Skill {
  /** Ability to find at the beginning, in the logits of `difficultyOf`: 0 is a careful eye that looks at welds for the first time. */
  readonly ability: number;
  /** Gained in `LEARNING_DAYS` days, logits. */
  readonly gain: number;
  /** On top of the ability for single types, logits; below 0 it is overlooked more than its size explains. */
  readonly offsets: Readonly<Partial<Record<ImperfectionType, number>>>;
  /** Calls of what is not there, mean a piece (Poisson). */
  readonly falseCalls: number;
  /** Chance that something that was found gets the name of a look-alike. */
  readonly confusion: number;
  /** Sizes are read larger by this share, and scatter by so many mm (one standard deviation). */
  readonly sizeBias: number;
  readonly sizeScatter: number;
  /** Scatter of places along the weld, mm; across it is a third of that. */
  readonly placeScatter: number;
  /** Scatter of dimensions, in their tolerances. */
  readonly measuring: number;
  /** Chance to know the answer to a question; whoever does not guesses one of four. */
  readonly knowledge: number;
  /** Chance to decide as the criteria say of what was written. */
  readonly sentencing: number;
}

/** Over so many days the gain is made, evenly. */
export const LEARNING_DAYS = 40;

/** Ability so many days after the beginning, logits. */
export const abilityAfter = ({ ability, gain }: Skill, days: number): number =>
  ability + gain * Math.min(1, Math.max(0, days / LEARNING_DAYS));
