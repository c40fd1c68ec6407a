import type { Face } from "../../weld";
import type { FeatureRequest } from "../work";
import type { FeatureRow } from "./rows";

/** How what is measured follows from what was asked. */
export interface Yield {
  /** What strikes the eye (size, or width where that is the measure) as a share of the severity asked. */
  readonly perSeverity: number;
  /** Standard deviation of that share. */
  readonly severitySpread: number;
  /** Measured length less the length asked, mm, and its standard deviation. */
  readonly lengthGain: number;
  readonly lengthSpread: number;
}

/** Of a row that has not been tried out: builders aim at what is asked. */
const UNTRIED: Yield = { perSeverity: 1, severitySpread: 0.06, lengthGain: 0, lengthSpread: 1.2 };

type Tried = readonly [perSeverity: number, severitySpread: number, lengthGain: number, lengthSpread: number];

/**
 * What came of requests of every row over its ranges, measured on finished faces. Keyed by face, type and, where it
 * matters, variant. A new look of a type wants its line learnt anew; the marks only depend on what is measured.
 */
const TRIED: Readonly<Record<string, Tried>> = {
  "cap/slag-residue": [1.03, 0.2, -0.3, 0.4],
  "root/slag-residue": [1.05, 0.15, -0.4, 0.4],
  "cap/surface-pore": [0.98, 0.04, 0, 0],
  "root/surface-pore": [1.01, 0.04, 0, 0],
  "cap/clustered-porosity": [0.96, 0.04, -0.1, 0.3],
  "root/root-porosity": [1, 0.2, -0.6, 0.5],
  "cap/crater-pipe": [0.95, 0.02, 0, 0],
  "cap/crater-crack": [0.51, 0.07, 0, 0],
  "root/crater-crack": [0.49, 0.05, 0, 0],
  "cap/poor-restart/hump": [0.95, 0.07, 0, 0],
  "cap/poor-restart/gap": [0.78, 0.15, 0, 0],
  "root/poor-restart/hump": [1.03, 0.08, 0, 0],
  "root/poor-restart/gap": [1.05, 0.24, 0, 0],
  "cap/longitudinal-crack": [1, 0.2, 0.3, 0.4],
  "root/longitudinal-crack": [1, 0.2, 0.2, 0.3],
  "cap/transverse-crack": [0.98, 0.06, 0, 0],
  "root/transverse-crack": [0.94, 0.1, 0, 0],
  "cap/stray-arc": [1, 0.2, 0, 0.8],
  "root/stray-arc": [1, 0.2, 0.3, 0.6],
  "cap/spatter": [1, 0.2, -0.6, 1.4],
  "root/spatter": [1, 0.2, -1.8, 1.3],
  "cap/grinding-mark": [1, 0.03, 0.9, 1.6],
  "root/grinding-mark": [1.01, 0.03, 1.1, 1.5],
  "cap/chipping-mark": [1.01, 0.03, 0.6, 0.6],
  "root/chipping-mark": [1.01, 0.05, 0.3, 0.7],
  "cap/continuous-undercut": [0.98, 0.05, -1.2, 1.5],
  "cap/intermittent-undercut": [0.96, 0.04, -3.4, 3.2],
  "cap/sidewall-fusion": [1.01, 0.05, -3.5, 2.8],
  "cap/incompletely-filled-groove": [1.1, 0.14, -1.6, 3],
  "cap/overlap": [0.99, 0.12, 1.9, 1.6],
  "cap/excess-weld-metal": [0.99, 0.03, 6.7, 3.3],
  "root/burn-through": [1.03, 0.05, 0, 0],
  "root/root-penetration": [1.01, 0.04, -1.1, 1.3],
  "root/root-fusion": [0.99, 0.07, -3.6, 2],
  "root/excess-penetration": [1, 0.02, 0.8, 3.3],
  "root/root-concavity": [1.02, 0.02, 2.5, 0.9],
  "root/shrinkage-groove": [0.98, 0.02, -1.2, 1.2],
};

/** What is to be expected of a row and one of its variants. */
export function yieldOf({ face, type }: Pick<FeatureRow, "face" | "type">, variant?: string): Yield {
  const tried = TRIED[`${face}/${type}/${variant}`] ?? TRIED[keyOf(face, type)];
  if (!tried) return UNTRIED;
  const [perSeverity, severitySpread, lengthGain, lengthSpread] = tried;
  return { perSeverity, severitySpread, lengthGain, lengthSpread };
}

const keyOf = (face: Face, type: FeatureRequest["type"]): string => `${face}/${type}`;
