import type { Face } from "../../weld";
import type { FeatureRequest } from "../work";

/**
 * Where an imperfection lies: along one toe, anywhere on one run, over the whole weld, on the plate beside it, or at the
 * place where an electrode ended.
 */
export type Site = "toe" | "run" | "weld" | "plate" | "stop";

type Range = readonly [from: number, to: number];

/** One row of the blueprint: what may be asked of a face, how likely, how large. */
export interface BlueprintRow {
  readonly type: FeatureRequest["type"];
  readonly face: Face;
  readonly site: Site;
  /** Chance against the other rows of the face; high, medium and low likelihood for process 111 are about 3, 2 and 1. */
  readonly weight: number;
  /** Most of this type on one face. */
  readonly most: number;
  /** Asked length along the weld, mm; [0, 0] for points. */
  readonly length: Range;
  /** Asked depth, height, diameter or width, mm, as the builder of the type reads it. */
  readonly severity: Range;
  /** How far it changes the weld beyond its length on either side, mm. */
  readonly room: number;
  readonly variants?: readonly string[];
  /** Share that begin just after an electrode was changed. */
  readonly afterStop?: number;
  /** Half its extent across, mm, for marks on the plate whose place across can be chosen. */
  readonly half?: number;
}

/**
 * Kinds, sizes and likelihoods. Sizes and likelihoods after the ranges that inspectors of manual metal arc welds quote (from
 * memory, common practice, no source), lengths shortened to a plate of 300 mm; sizes begin where a gauge can tell
 * the imperfection from sound metal.
 */
export const BLUEPRINT: readonly BlueprintRow[] = [
  row("cap", "continuous-undercut", "toe", 2.6, 2, [16, 48], [0.33, 1.1], 4, { afterStop: 0.35 }),
  row("cap", "intermittent-undercut", "toe", 2, 1, [24, 50], [0.35, 0.9], 3),
  row("cap", "sidewall-fusion", "toe", 2, 1, [14, 40], [0.55, 1.4], 6),
  row("cap", "incompletely-filled-groove", "weld", 2, 1, [24, 50], [0.7, 1.5], 8, { variants: ["both", "one-side"] }),
  row("cap", "overlap", "toe", 2, 1, [10, 34], [1.3, 3], 3),
  row("cap", "excess-weld-metal", "weld", 2, 1, [22, 42], [3.7, 5], 12),
  row("cap", "slag-residue", "toe", 2, 2, [6, 24], [0.9, 1.9], 2, { afterStop: 0.35 }),
  row("cap", "slag-residue", "run", 1, 1, [6, 22], [0.9, 1.8], 2, { variants: ["between"] }),
  row("cap", "surface-pore", "run", 3, 2, [0, 0], [0.75, 2.6], 2, { afterStop: 0.6 }),
  row("cap", "clustered-porosity", "run", 1.4, 1, [8, 20], [1, 1.9], 2, { afterStop: 0.5 }),
  row("cap", "crater-pipe", "stop", 1.6, 1, [0, 0], [1, 2], 10),
  row("cap", "crater-crack", "stop", 1.4, 1, [0, 0], [3.2, 7], 10),
  row("cap", "poor-restart", "stop", 2, 1, [0, 0], [1.3, 2.3], 14, { variants: ["hump", "hump", "gap"] }),
  row("cap", "longitudinal-crack", "run", 0.9, 1, [12, 45], [0.11, 0.22], 2, { variants: ["centre"] }),
  row("cap", "longitudinal-crack", "toe", 0.7, 1, [12, 40], [0.11, 0.2], 2, { variants: ["toe", "haz"] }),
  row("cap", "transverse-crack", "run", 0.9, 1, [0, 0], [5, 11], 3),
  row("cap", "stray-arc", "plate", 2.2, 1, [4, 15], [0.22, 0.55], 4, { half: 3.5 }),
  row("cap", "spatter", "plate", 1.6, 1, [15, 34], [0.6, 1.3], 6),
  row("cap", "grinding-mark", "plate", 1.6, 1, [13, 28], [0.3, 0.8], 5, { half: 4 }),
  row("cap", "chipping-mark", "plate", 1.4, 1, [4, 11], [0.28, 0.6], 3, { half: 2.5 }),
  row("root", "root-penetration", "weld", 2.2, 1, [15, 42], [0.9, 1.7], 12),
  row("root", "root-fusion", "toe", 2.4, 1, [15, 42], [0.55, 1.3], 8),
  row("root", "excess-penetration", "weld", 2, 1, [10, 28], [3.2, 4.6], 10),
  row("root", "burn-through", "weld", 1.6, 1, [0, 0], [4.5, 8], 8),
  row("root", "root-concavity", "weld", 1.2, 1, [18, 44], [0.55, 1.2], 6),
  row("root", "shrinkage-groove", "toe", 2, 1, [18, 48], [0.4, 0.9], 5, { variants: ["one", "one", "both"] }),
  row("root", "root-porosity", "weld", 1.2, 1, [8, 24], [0.7, 1.3], 3, { afterStop: 0.4 }),
  row("root", "surface-pore", "run", 1.4, 1, [0, 0], [0.7, 1.8], 2, { afterStop: 0.6 }),
  row("root", "slag-residue", "toe", 1.4, 1, [6, 18], [0.8, 1.5], 2, { afterStop: 0.3 }),
  row("root", "poor-restart", "stop", 2, 1, [0, 0], [1.6, 2.6], 14, { variants: ["hump", "hump", "gap"] }),
  row("root", "longitudinal-crack", "run", 0.9, 1, [12, 40], [0.11, 0.2], 2, { variants: ["centre", "toe"] }),
  row("root", "transverse-crack", "run", 0.6, 1, [0, 0], [4, 6], 3),
  row("root", "crater-crack", "stop", 1, 1, [0, 0], [2.6, 4], 8),
  row("root", "stray-arc", "plate", 1.2, 1, [4, 12], [0.22, 0.5], 4, { half: 3.5 }),
  row("root", "spatter", "plate", 0.9, 1, [15, 30], [0.6, 1.1], 6),
  row("root", "grinding-mark", "plate", 1.2, 1, [13, 28], [0.3, 0.8], 5, { half: 4 }),
  row("root", "chipping-mark", "plate", 0.9, 1, [4, 10], [0.28, 0.6], 3, { half: 2.5 }),
];

/** Harmless features that tempt to a false call. */
export const DECOYS: readonly BlueprintRow[] = [
  row("cap", "shallow-undercut", "toe", 2, 1, [14, 30], [0.1, 0.18], 3),
  row("cap", "light-grinding", "plate", 2, 1, [14, 26], [0.08, 0.14], 5, { half: 4 }),
  row("cap", "sound-stop", "stop", 1, 1, [0, 0], [0, 0], 8),
  row("root", "light-grinding", "plate", 2, 1, [14, 26], [0.08, 0.14], 5, { half: 4 }),
  row("root", "sound-stop", "stop", 1, 1, [0, 0], [0, 0], 6),
];

/** How many indications a face gets, equally likely, and how many decoys. */
export const COUNTS: Readonly<Record<Face, { readonly indications: Range; readonly decoys: Range }>> = {
  cap: { indications: [5, 9], decoys: [1, 2] },
  root: { indications: [4, 7], decoys: [0, 1] },
};

function row(
  face: Face,
  type: BlueprintRow["type"],
  site: Site,
  weight: number,
  most: number,
  length: Range,
  severity: Range,
  room: number,
  more: Pick<BlueprintRow, "variants" | "afterStop" | "half"> = {},
): BlueprintRow {
  return { face, type, site, weight, most, length, severity, room, ...more };
}
