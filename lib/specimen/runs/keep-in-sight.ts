import type { Face } from "../../weld";
import type { FacePlan } from "../plan";
import { moveToe, outerRun } from "./edit";

/** Outer toes reach at least this far over the edges of the joint, mm. */
const COVERED = { cap: 0.45, root: 0.3 } as const;
/** The lower toe of a run lies on the run before it, at most so far above or below its middle, as shares of its half width. */
const LAP = { above: 0.5, below: 0.4, eased: 0.25 };

/**
 * However the hand wanders, a welder sees what is being covered: the outer toes keep outside the edges of the joint, and
 * every run laps over the one before it, neither leaving a valley nor burying it.
 */
export function keepInSight(face: Face, plan: FacePlan): void {
  lapOver(plan);
  coverEdges(plan, COVERED[face]);
}

function coverEdges(plan: FacePlan, least: number): void {
  for (const side of [-1, 1] as const) {
    const run = outerRun(plan, side);
    for (let i = 0; i < run.centre.length; i++) {
      const over = side * run.centre[i] + run.halfWidth[i] - plan.groove;
      const missing = 2 * least - over;
      if (missing <= 0) continue;
      // eased, so that no toe is ruled along the edge
      moveToe(run, side, i, side * (plan.groove + least * (1 + Math.exp(-missing / least))), 1);
    }
  }
}

function lapOver({ runs }: FacePlan): void {
  for (let n = 1; n < runs.length; n++) {
    const before = runs[n - 1];
    const run = runs[n];
    for (let i = 0; i < run.centre.length; i++) {
      const width = before.halfWidth[i];
      const toe = (run.centre[i] - run.halfWidth[i] - before.centre[i]) / width;
      const kept = toe > 0 ? eased(toe, LAP.above, LAP.eased) : -eased(-toe, LAP.below, LAP.eased);
      if (kept !== toe) moveToe(run, -1, i, before.centre[i] + kept * width, 1);
    }
  }
}

/** The value itself as far as `most - soft`, beyond it ever less, never more than `most`. */
function eased(value: number, most: number, soft: number): number {
  const beyond = value - (most - soft);
  return beyond <= 0 ? value : most - soft * Math.exp(-beyond / soft);
}
