import type { RandomStream } from "../random";
import type { Choice, Draft } from "./kind";

/** A list in an order drawn by chance (Fisher and Yates). */
export function shuffled<T>(list: readonly T[], random: RandomStream): T[] {
  const all = [...list];
  for (let n = all.length - 1; n > 0; n--) {
    const other = random.integer(n + 1);
    [all[n], all[other]] = [all[other], all[n]];
  }
  return all;
}

/** What options are ranked by, so that neither the number nor the length of the right one tells it. */
const rankOf = ({ text, value }: Choice): number => value ?? text.length;

/**
 * Three wrong options, or null where there are not three. How many of them are smaller (or shorter) than the right one is drawn
 * first, as far as there are enough. Numbers lie more than twice the tolerance from the right one, so that it is the nearest to
 * whatever a careful hand measures, and more than the tolerance from each other.
 */
export function chooseWrong({ right, wrong, tolerance = 0 }: Draft, random: RandomStream): Choice[] | null {
  const chosen: Choice[] = [];
  const fits = (choice: Choice) =>
    choice.text !== right.text &&
    isClear(choice, right, 2 * tolerance) &&
    chosen.every((other) => other.text !== choice.text && isClear(other, choice, tolerance));
  const pool = shuffled(wrong, random);
  const isBelow = new Map(
    pool.map((choice) => {
      const difference = rankOf(choice) - rankOf(right);
      return [choice, difference === 0 ? random.chance(0.5) : difference < 0];
    }),
  );
  const take = (below: boolean, most: number) => {
    for (const choice of pool) {
      if (chosen.filter((one) => isBelow.get(one) === below).length >= most) return;
      if (isBelow.get(choice) === below && fits(choice)) chosen.push(choice);
    }
  };
  const below = random.integer(4);
  take(true, below);
  take(false, 3 - below);
  // whichever side has too few leaves the rest to the other one
  if (chosen.length < 3) take(true, 3 - chosen.filter((one) => !isBelow.get(one)).length);
  if (chosen.length < 3) take(false, 3 - chosen.filter((one) => isBelow.get(one)).length);
  return chosen.length === 3 ? chosen : null;
}

function isClear(one: Choice, other: Choice, distance: number): boolean {
  if (one.value === undefined || other.value === undefined) return true;
  return Math.abs(one.value - other.value) > distance + 1e-9;
}
