import type { FaceWork } from "../work";

/** Room beside the widest run for what imperfections and scallops add, mm. */
const ROOM = 4.5;

/** The rows that weld metal can cover on this face, mm: noise is drawn and metal painted only there. */
export function weldZone(work: FaceWork): readonly [from: number, to: number] {
  let half = work.plan.groove;
  for (const run of work.plan.runs) {
    for (let i = 0; i < run.centre.length; i++) half = Math.max(half, Math.abs(run.centre[i]) + run.halfWidth[i]);
  }
  return [-half - ROOM, half + ROOM];
}
