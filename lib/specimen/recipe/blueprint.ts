import type { Face, Process } from "../../weld";
import { CUT_ROWS, type FeatureRow, type Likelihood, type Range, SHAPED_ROWS } from "./rows";

/** Everything that can go wrong on a butt plate. */
export const FEATURE_ROWS: readonly FeatureRow[] = [...SHAPED_ROWS, ...CUT_ROWS];

/** What a likelihood weighs against another. */
const WEIGHTS: Readonly<Record<Likelihood, number>> = { high: 3, medium: 2, low: 1, never: 0 };

/** Weight of a row for a process, before the joint has its say. */
export const weightOf = (row: FeatureRow, process: Process): number => row.share * WEIGHTS[row.likelihood[process]];

/** How many indications a face gets, equally likely, and how many decoys. */
export const COUNTS: Readonly<Record<Face, { readonly indications: Range; readonly decoys: Range }>> = {
  cap: { indications: [5, 9], decoys: [1, 2] },
  root: { indications: [4, 7], decoys: [0, 1] },
};
