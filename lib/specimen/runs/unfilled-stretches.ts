import { columnX } from "../../surface";
import type { FacePlan, RunPlan } from "../plan";
import type { FaceWork } from "../work";

/** A length along the weld, mm. */
export interface Stretch {
  readonly a: number;
  readonly b: number;
}

/** Share of its planned half width within which a run lies thick whatever its edges do, and what a ragged toe may lack of it, mm. */
const THICK = { share: 0.9, ragged: 0.15 };
/** Near its ends an electrode length is rounded and may lack width: it counts as metal this far inside them, mm. */
const ROUNDED = 2.5;
/** Stretches are this much longer at each end than what can be seen, and joined where that leaves no gap, mm. */
const ROOM = 4;

/** Where the runs leave something of the joint open within `half` mm of its centre line (a value per column), from plan alone. */
export function unfilledStretches({ strip, plan }: FaceWork, half: Float32Array): readonly Stretch[] {
  const { grid } = strip;
  const stretches: { a: number; b: number }[] = [];
  for (let i = 0; i < grid.columns; i++) {
    const x = columnX(grid, i);
    if (isFilled(plan, i, x, half[i])) continue;
    const last = stretches.at(-1);
    if (last && x - ROOM <= last.b) last.b = x + ROOM;
    else stretches.push({ a: x - ROOM, b: x + ROOM });
  }
  return stretches;
}

/** Whether thick metal reaches from -half to half without a gap; runs lie in order across. */
function isFilled({ runs }: FacePlan, i: number, x: number, half: number): boolean {
  let reached = -half;
  for (const run of runs) {
    if (!isThick(run, x)) continue;
    const thick = THICK.share * run.halfWidth[i] - THICK.ragged;
    if (run.centre[i] - thick <= reached) reached = Math.max(reached, run.centre[i] + thick);
  }
  return reached >= half;
}

const isThick = ({ segments }: RunPlan, x: number): boolean =>
  segments.some(({ a, b, narrow = 0 }) => narrow === 0 && x > a + ROUNDED && x < b - ROUNDED);
