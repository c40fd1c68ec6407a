import { mix } from "../../math";
import type { RandomStream } from "../../random";
import { nearestColumn, rowY } from "../../surface";
import type { FaceWork, FeatureRequest } from "../work";

/** Index of the run a request means: its own, or the one laid last. */
export const runIndex = (work: FaceWork, request: Pick<FeatureRequest, "run">): number => {
  const last = work.plan.runs.length - 1;
  return Math.min(request.run ?? last, last);
};

/**
 * Part of a run that is to be seen near x mm: lowest and highest y of the metal that lies on top within 1 mm of it.
 * The planned width if the run cannot be seen there.
 */
export function visibleRun(work: FaceWork, run: number, x: number): { low: number; high: number } {
  const { grid, run: top } = work.strip;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  const i0 = nearestColumn(grid, x - 1);
  const i1 = nearestColumn(grid, x + 1);
  for (let j = 0; j < grid.rows; j++) {
    let seen = 0;
    for (let i = i0; i <= i1; i++) if (top[j * grid.columns + i] === run + 1) seen++;
    if (seen * 2 <= i1 - i0 + 1) continue;
    const y = rowY(grid, j);
    low = Math.min(low, y);
    high = Math.max(high, y);
  }
  if (high > low) return { low, high };
  const plan = work.plan.runs[run];
  const i = nearestColumn(grid, x);
  return { low: plan.centre[i] - plan.halfWidth[i], high: plan.centre[i] + plan.halfWidth[i] };
}

/** A place across a visible run: its middle, or with `spread` (share of its half width) about it. */
export function placeOnRun(work: FaceWork, run: number, x: number, random?: RandomStream, spread = 0): number {
  const { low, high } = visibleRun(work, run, x);
  const off = random && spread > 0 ? random.uniform(-spread, spread) : 0;
  return mix(low, high, 0.5 + 0.5 * off);
}
