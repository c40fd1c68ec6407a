import { grooveHalfWidth, type Process, type SurfaceFace } from "../../weld";
import type { WorkedJoint } from "../work";
import { measureOf, type Seen } from "./size-band";
import { VISIBILITY } from "./visibility";

/** Where on a face an item lies, as far as that makes it easier or harder to find. */
export type Place = "bead" | "toe" | "plate" | "root";

/** The coefficients of `difficultyOf`, in logits. Common practice, no source; corrected after blind trials. */
export const DIFFICULTY = {
  /** Easier by this for every e-fold of the measure over its type's threshold. */
  perSize: 2.76,
  /** Easier by this for a contrast of 1. */
  perContrast: 0.7,
  /** Easier by this for every e-fold of a line's length over `usualLength` mm, where its length is not the measure itself. */
  perLength: 0.45,
  usualLength: 20,
  places: { bead: 0.1, toe: 0.2, plate: -0.1, root: 0.1 } satisfies Record<Place, number>,
  /** What slag, oxide and spatter of the process hide. */
  processes: { "111": 0.15, "135": 0, "136": 0.05, "141": -0.2 } satisfies Record<Process, number>,
} as const;

/** Beyond these an item gets no easier and no harder, logits. */
const BOUNDS = { easiest: -5, hardest: 4 };
const AT_TOE = { inside: 2, outside: 3 };

export function placeOf(item: Seen, face: SurfaceFace, joint: WorkedJoint): Place {
  if (face === "root") return Math.abs(item.across) > joint.rootGap / 2 + 5 ? "plate" : "root";
  return placeByToe(grooveHalfWidth(joint) - Math.abs(item.across));
}

/** Where something lies that is so far inside the toe, mm. */
export const placeByToe = (inside: number): Place =>
  inside > AT_TOE.inside ? "bead" : inside > -AT_TOE.outside ? "toe" : "plate";

/** How hard an item is to find, in logits: whoever has this ability finds it every second time. */
export const difficultyOf = (item: Seen, face: SurfaceFace, joint: WorkedJoint): number =>
  difficultyAt(item, placeOf(item, face, joint), joint.process);

/** The same for an item whose place is known. */
export function difficultyAt(item: Seen, place: Place, process: Process): number {
  const { measure, threshold, contrast } = VISIBILITY[item.type];
  const { perSize, perContrast, perLength, usualLength, places, processes } = DIFFICULTY;
  const length = item.end - item.start;
  const longer = measure === "length" || length <= 0 ? 0 : Math.log(length / usualLength);
  const difficulty =
    places[place] +
    processes[process] -
    perSize * Math.log(measureOf(item, measure) / threshold) -
    perLength * longer -
    perContrast * contrast;
  return Math.min(BOUNDS.hardest, Math.max(BOUNDS.easiest, difficulty));
}

/** Chance that somebody of an ability finds an item. */
export const chanceToFind = (ability: number, difficulty: number): number => 1 / (1 + Math.exp(difficulty - ability));
