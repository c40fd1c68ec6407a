import { imperfection } from "../../imperfections";
import type { Face } from "../../weld";
import type { ClutterItem, TruthItem } from "../truth";
import type { WorkedJoint } from "../work";
import { chanceToFind, difficultyOf } from "./difficulty";

/** Ability of somebody who just passes, in logits; 0 is a careful eye that looks at welds for the first time. */
export const PASS_ABILITY = 2.2;

/** What is to be expected of a call, common practice, no source; corrected after blind trials. */
export const CALLS = {
  /** Share of an item's worth that a find earns: not every find is named and measured right. */
  find: 0.92,
  /** False calls on a face, and more for every piece of clutter on it. */
  falseCalls: 0.3,
  perClutter: 0.05,
  /** What a false call costs, in items (half an item, by the marking rule). */
  cost: 0.5,
} as const;

/** One face as a section of a paper: what there is to find, and what tempts. */
export interface SectionTruth {
  readonly face: Face;
  readonly joint: WorkedJoint;
  readonly items: readonly TruthItem[];
  readonly clutter: readonly ClutterItem[];
}

/**
 * Mark to be expected of an ability on one section, 0 to 100: chances to find, weighted as in marking, less what false calls
 * cost. A face without anything to find gives 100 less the false calls at 15 each.
 */
export function expectedMark({ face, joint, items, clutter }: SectionTruth, ability: number): number {
  const falseCalls = CALLS.falseCalls + CALLS.perClutter * clutter.length;
  const real = items.filter((item) => !item.neutral);
  if (real.length === 0) return Math.max(0, 100 - 15 * falseCalls);
  let earned = 0;
  let worth = 0;
  for (const item of real) {
    const { weight } = imperfection(item.type);
    earned += weight * CALLS.find * chanceToFind(ability, difficultyOf(item, face, joint));
    worth += weight;
  }
  const cost = CALLS.cost * (worth / real.length) * falseCalls;
  return (100 * Math.max(0, earned - cost)) / worth;
}
