import type { Finished, Range } from "./finished";
import { plateBeside } from "./plate-line";

/** The plates are probed over a longer way than for a groove, because their lines are carried on to the centre. */
const PROBED: Range = { from: 3, to: 15 };

/**
 * Step from plate A down to plate B at x, mm, positive where A stands higher: difference of the two plates' straight
 * lines (fitted 3 to 15 mm outside the toes) at the joint's centre, so that angular distortion does not count.
 */
export function stepBetweenPlates(face: Finished, x: number): number {
  return plateBeside(face, 1, x, PROBED)(0) - plateBeside(face, -1, x, PROBED)(0);
}
