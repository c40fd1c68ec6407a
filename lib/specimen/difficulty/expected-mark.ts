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
  /** What it costs where there is nothing to find, marks. */
  onClean: 15,
} as const;

/** One face as a section of a paper: what there is to find, and what tempts. */
export interface SectionTruth {
  readonly face: Face;
  readonly joint: WorkedJoint;
  readonly items: readonly TruthItem[];
  readonly clutter: readonly ClutterItem[];
}

/** What is to be expected of somebody on a piece. */
export interface Expectation {
  /** 0 to 100. */
  readonly mark: number;
  /** By how much marks of the same person on pieces like this scatter by chance alone: one standard deviation, marks. */
  readonly sem: number;
}

/**
 * Mark for the indications of a piece to be expected of an ability: chances to find, weighted as in marking over all faces
 * together, less what false calls cost; a piece without anything to find gives 100 less 15 for each false call. Its standard
 * error is the model's: every indication is found or not by itself, and false calls come by chance at a steady rate (Poisson).
 * How well a find is named and measured counts as its mean, so the true scatter is somewhat larger.
 */
export function expectPiece(faces: readonly SectionTruth[], ability: number): Expectation {
  const falseCalls = faces.reduce((sum, { clutter }) => sum + CALLS.falseCalls + CALLS.perClutter * clutter.length, 0);
  let count = 0;
  let earned = 0;
  let worth = 0;
  let variance = 0;
  for (const { face, joint, items } of faces) {
    for (const item of items.filter(({ neutral }) => !neutral)) {
      const { weight } = imperfection(item.type);
      const chance = chanceToFind(ability, difficultyOf(item, face, joint));
      earned += weight * CALLS.find * chance;
      variance += (weight * CALLS.find) ** 2 * chance * (1 - chance);
      worth += weight;
      count++;
    }
  }
  if (count === 0) {
    return {
      mark: Math.max(0, 100 - CALLS.onClean * falseCalls),
      sem: CALLS.onClean * Math.sqrt(falseCalls),
    };
  }
  const price = CALLS.cost * (worth / count);
  return {
    mark: (100 * Math.max(0, earned - price * falseCalls)) / worth,
    sem: (100 * Math.sqrt(variance + price ** 2 * falseCalls)) / worth,
  };
}

/** Mark to be expected of an ability on one face by itself, 0 to 100. */
export const expectedMark = (face: SectionTruth, ability: number): number => expectPiece([face], ability).mark;
