import { hypot } from "../../../math";
import type { RunPlan } from "../../plan";
import { legsBetween } from "../unfolding";

/** Two legs, mm from the root corner. */
export interface Legs {
  readonly base: number;
  readonly standing: number;
}

/** Widens, narrows and shifts all runs of a column together so that the weld gets other legs; gives those it had. */
export function reshapeColumn(runs: readonly RunPlan[], i: number, wanted: (legs: Legs) => Legs): void {
  const first = runs[0];
  const last = runs[runs.length - 1];
  const low = first.centre[i] - first.halfWidth[i];
  const high = last.centre[i] + last.halfWidth[i];
  const { base, standing } = wanted(legsBetween(low, high));
  const half = hypot(base, standing) / 2;
  const middle = (standing - base) / 2;
  const wider = (2 * half) / (high - low);
  for (const run of runs) {
    run.centre[i] = middle - half + (run.centre[i] - low) * wider;
    run.halfWidth[i] *= wider;
  }
}
