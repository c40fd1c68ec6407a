import { type Interval, studentCdf, twoSidedZ } from "../../math";

/** How the marks of a class lie in one kind of section: the ground from which a single learner is judged. Marks, 0 to 100. */
export interface ClassMarks {
  readonly mean: number;
  /** Standard deviation of what learners would earn on average, from one to the next. */
  readonly between: number;
  /** Standard deviation of one learner's marks from piece to piece. */
  readonly within: number;
  /** How many marks the last one rests on, as degrees of freedom. */
  readonly degrees: number;
}

/** Where no class is known. Common practice, no source. */
export const ANY_CLASS: ClassMarks = { mean: 65, between: 15, within: 10, degrees: 8 };

/** One learner's chance to pass the next section of a kind. */
export interface ChanceToPass {
  /** Mark to be expected. */
  readonly expected: number;
  readonly chance: number;
  /** 95 %: what the chance is if the learner's true level lies at either end of its own interval. */
  readonly interval: Interval;
  readonly marks: number;
  /** How many more marks until the learner's own weigh more than the class's; 0 if they do. */
  readonly needed: number;
}

/** A mark counts half as much as one that is so many sections younger. Common practice, no source. */
const HALF_LIFE = 4;
const LEAST = 3;

/**
 * Normal model with shrinkage: marks scatter about a learner's own level with `within`, the levels about the class's mean with
 * `between`. The level is the precision-weighted mean of the class and of the learner's marks, the newest of which weigh most, so
 * that somebody who gets better is not held back by how it began. The next mark is predicted by Student's t with the class's
 * degrees of freedom and those of the learner's own marks.
 * @param marks newest last
 * @param passMark marks needed; the shown mark decides, which rounds half a tenth upwards
 */
export function chanceToPass(marks: readonly number[], passMark: number, group: ClassMarks = ANY_CLASS): ChanceToPass {
  const weights = marks.map((_, n) => 0.5 ** ((marks.length - 1 - n) / HALF_LIFE));
  const weight = weights.reduce((sum, one) => sum + one, 0);
  const own = weight === 0 ? 0 : marks.reduce((sum, mark, n) => sum + weights[n] * mark, 0) / weight;
  const spread = marks.reduce((sum, mark, n) => sum + weights[n] * (mark - own) ** 2, 0);
  const ownDegrees = Math.max(0, weight - 1);
  const degrees = group.degrees + ownDegrees;
  const within = Math.max(1, Math.sqrt((group.degrees * group.within ** 2 + spread) / degrees));
  const precision = weight / within ** 2 + 1 / group.between ** 2;
  const level = ((weight * own) / within ** 2 + group.mean / group.between ** 2) / precision;
  const levelError = Math.sqrt(1 / precision);
  const over = (expected: number, deviation: number) =>
    studentCdf((expected - (passMark - 0.05)) / deviation, Math.max(1, degrees));
  const reach = twoSidedZ(0.95) * levelError;
  return {
    expected: level,
    chance: over(level, Math.hypot(within, levelError)),
    interval: { low: over(level - reach, within), high: over(level + reach, within) },
    marks: marks.length,
    needed: Math.max(0, LEAST - marks.length),
  };
}

/** So many marks' worth of `ANY_CLASS` stands beside what a class shows itself. */
const WORTH = { learners: 4, degrees: 8 };

/**
 * The ground of a class from the marks of its learners, each newest last: analysis of variance by learner, drawn towards
 * `ANY_CLASS` where there are few.
 */
export function classMarks(byLearner: readonly (readonly number[])[]): ClassMarks {
  const learners = byLearner.filter((marks) => marks.length > 0);
  const means = learners.map((marks) => marks.reduce((sum, mark) => sum + mark, 0) / marks.length);
  const squares = learners.reduce(
    (sum, marks, n) => sum + marks.reduce((of, mark) => of + (mark - means[n]) ** 2, 0),
    0,
  );
  const ownDegrees = learners.reduce((sum, marks) => sum + marks.length - 1, 0);
  const degrees = ownDegrees + WORTH.degrees;
  const withinSquared = (squares + WORTH.degrees * ANY_CLASS.within ** 2) / degrees;
  const count = means.length;
  const mean = (means.reduce((sum, one) => sum + one, 0) + WORTH.learners * ANY_CLASS.mean) / (count + WORTH.learners);
  const scatter = means.reduce((sum, one) => sum + (one - mean) ** 2, 0);
  // what the means of few marks scatter by chance is not between learners
  const byChance = learners.reduce((sum, marks) => sum + withinSquared / marks.length, 0);
  const betweenSquared =
    (Math.max(0, scatter - byChance) + WORTH.learners * ANY_CLASS.between ** 2) / (count + WORTH.learners);
  return { mean, between: Math.sqrt(betweenSquared), within: Math.sqrt(withinSquared), degrees };
}
