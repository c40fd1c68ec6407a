import { CLUTTER } from "../../imperfections";
import type { JointPosition, Process } from "../../weld";
import { HARMLESS } from "../work";
import { CUT_ROWS, type FeatureRow, type Likelihood, SHAPED_ROWS } from "./rows";

/** Everything that can go wrong on a butt plate and is planted; how the plates stand comes from the joint. */
export const FEATURE_ROWS: readonly FeatureRow[] = [...SHAPED_ROWS, ...CUT_ROWS];

/** What a likelihood weighs against another. Common practice, no source. */
const WEIGHTS: Readonly<Record<Likelihood, number>> = { high: 3, medium: 2, low: 1, never: 0 };

/** Weight of a row for a process and a position, before the joint has its say. */
export const weightOf = (row: FeatureRow, process: Process, position: JointPosition): number =>
  row.share * WEIGHTS[row.likelihood[process]] * (row.positions?.[position] ?? 1);

/** True where the row lies between two runs. */
export const isBetweenRuns = (row: FeatureRow): boolean => row.variants?.includes("between") ?? false;

/** How many runs side by side a row needs. */
export const runsNeeded = (row: FeatureRow): number => Math.max(row.leastRuns ?? 1, isBetweenRuns(row) ? 2 : 1);

/** What a row plants: something to report, something harmless that looks like it, or clutter. */
export function kindOf({ type }: FeatureRow): "imperfection" | "harmless" | "clutter" {
  if ((CLUTTER as readonly string[]).includes(type)) return "clutter";
  return (HARMLESS as readonly string[]).includes(type) ? "harmless" : "imperfection";
}
