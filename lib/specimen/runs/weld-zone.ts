import type { Grid } from "../../surface";
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

/** First and last + 1 row of the grid between the mm given. */
export function zoneRows(grid: Grid, zone: readonly [number, number]): { first: number; end: number } {
  return {
    first: Math.max(0, Math.floor((zone[0] - grid.y0) * grid.perMm)),
    end: Math.min(grid.rows, Math.ceil((zone[1] - grid.y0) * grid.perMm)),
  };
}
