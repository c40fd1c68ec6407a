import { clamp, keepWarm, mix } from "../../math";
import { columnX, type Grid, nearestColumn } from "../../surface";
import type { FacePlan, RunPlan } from "../plan";
import type { FaceWork } from "../work";

type Side = 1 | -1;

/** Narrowest run that a moved toe may leave, mm of half width. */
const LEAST_HALF_WIDTH = 0.4;

/** The run whose edge is the weld's toe on a side: runs are numbered from plate B's side (y < 0). */
export function outerRun(plan: FacePlan, side: Side): RunPlan {
  const run = side < 0 ? plan.runs[0] : plan.runs[plan.runs.length - 1];
  if (!run) throw new Error("a face without runs has no toe");
  return run;
}

/**
 * Moves one edge of a run in one column towards `targetY` mm by `share` (0 leaves it, 1 puts it there); the other edge
 * stays. A run never gets narrower than 0.8 mm.
 */
export function moveToe(run: RunPlan, side: Side, column: number, targetY: number, share: number): void {
  const centre = run.centre[column];
  const halfWidth = run.halfWidth[column];
  const fixed = centre - side * halfWidth;
  const moved = mix(centre + side * halfWidth, targetY, share);
  const half = Math.max(LEAST_HALF_WIDTH, (side * (moved - fixed)) / 2);
  run.halfWidth[column] = half;
  run.centre[column] = fixed + side * half;
}

/** Visits the columns whose centres lie between x0 and x1 mm, in order. */
export function forColumns(grid: Grid, x0: number, x1: number, visit: (column: number, x: number) => void): void {
  keepWarm(visit);
  const first = Math.max(0, Math.ceil((x0 - grid.x0) * grid.perMm - 0.5));
  const last = Math.min(grid.columns - 1, Math.floor((x1 - grid.x0) * grid.perMm - 0.5));
  for (let i = first; i <= last; i++) visit(i, columnX(grid, i));
}

/** Mean of the numbers in columns within `reach` mm of x; NaN where there are none. */
function meanNear(grid: Grid, values: Float32Array, x: number, reach: number): number {
  const first = nearestColumn(grid, x - reach);
  const last = nearestColumn(grid, x + reach);
  let sum = 0;
  let count = 0;
  for (let i = first; i <= last; i++) {
    if (Number.isNaN(values[i])) continue;
    sum += values[i];
    count++;
  }
  return sum / count;
}

/**
 * The weld's outer toe on a side near x, y mm: mean over `reach` mm to both sides (0: the nearest column). Beyond the
 * ends of the weld the edge of the joint.
 */
export function toeAt(work: FaceWork, side: Side, x: number, reach = 0): number {
  const toe = meanNear(work.strip.grid, side < 0 ? work.toeMinus : work.toePlus, x, reach);
  return Number.isNaN(toe) ? side * work.plan.groove : toe;
}

/** Edge of one run as laid near x, y mm; NaN where that run is absent. */
export function runEdgeAt(work: FaceWork, run: number, side: Side, x: number, reach = 0): number {
  const edges = side < 0 ? work.runMinus : work.runPlus;
  const edge = edges[run];
  if (!edge) throw new Error(`run ${run} of ${edges.length} has not been laid`);
  return meanNear(work.strip.grid, edge, x, reach);
}

/** Middle between the two outer toes near x, y mm. */
export function middleOfWeld(work: FaceWork, x: number): number {
  const reach = 1.5;
  const middle = (toeAt(work, -1, x, reach) + toeAt(work, 1, x, reach)) / 2;
  return clamp(middle, -work.plan.groove, work.plan.groove);
}
