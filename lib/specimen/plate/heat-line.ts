import { tabulate } from "../../math";
import { boxBlur, columnX } from "../../surface";
import type { RunPlan } from "../plan";
import type { FaceWork } from "../work";

/** Smoothing of toes and heat along the weld, mm: heat spreads. */
const SPREAD = 5;

/** Toe and heat on one side of the weld, per column of the strip. */
export interface HeatLine {
  readonly toe: Float32Array;
  /** Heat against the mean of this weld, about 0.45..2.6. */
  readonly heat: Float32Array;
}

/** Smoothed toe and local heat of the outer run on one side. */
export function heatLine(work: FaceWork, side: 1 | -1): HeatLine {
  const { runs } = work.plan;
  const run = side < 0 ? 0 : runs.length - 1;
  const reach = SPREAD * work.strip.grid.perMm;
  const along = (line: Float32Array) => boxBlur(line, line.length, 1, reach, 0, 2);
  const toe = withoutGaps(side < 0 ? work.toeMinus : work.toePlus, side * work.plan.groove);
  return { toe: along(toe), heat: along(along(heatOfRun(work, runs[run], run))) };
}

/** Where the weld has no toe (before its start, in a hole) the nearest one counts. */
function withoutGaps(toe: Float32Array, fallback: number): Float32Array {
  const filled = toe.slice();
  let last = toe.find((y) => Number.isFinite(y)) ?? fallback;
  for (let i = 0; i < filled.length; i++) {
    if (Number.isFinite(filled[i])) last = filled[i];
    else filled[i] = last;
  }
  return filled;
}

/** Heat goes with the cross-section laid per mm, and stays a moment longer where an electrode stopped. */
function heatOfRun(work: FaceWork, run: RunPlan, index: number): Float32Array {
  const count = run.halfWidth.length;
  const mean = (line: Float32Array, least: number) =>
    line.reduce((sum, value) => sum + Math.max(least, value), 0) / count;
  const width = mean(run.halfWidth, 0.1);
  const height = mean(run.height, 0.1);
  const heat = tabulate(run.halfWidth.length, (i) => {
    const wide = run.halfWidth[i] / width;
    const full = 0.55 + (0.45 * Math.max(0, run.height[i])) / height;
    return Math.min(2.6, Math.max(0.45, 0.35 + 0.65 * wide ** 3 * full));
  });
  for (const crater of work.craters) {
    if (crater.run !== index && crater.run !== index + 1) continue;
    for (let i = 0; i < count; i++) heat[i] += 0.45 * Math.exp(-(((columnX(work.strip.grid, i) - crater.x) / 7) ** 2));
  }
  return heat;
}
