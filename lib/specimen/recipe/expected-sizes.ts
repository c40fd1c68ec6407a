import type { Process } from "../../weld";
import type { FeatureRow } from "./rows";

/** How what is measured follows from what was asked. */
export interface Yield {
  /** What strikes the eye (size, or width where that is the measure) as a share of the severity asked. */
  readonly perSeverity: number;
  /** Standard deviation of that share. */
  readonly severitySpread: number;
  /** Measured length as a share of the length asked, what comes to it besides, mm, and its standard deviation, mm. */
  readonly perLength: number;
  readonly lengthGain: number;
  readonly lengthSpread: number;
  /** Fainter than this severity its length depends on chance, mm. */
  readonly steadyFrom: number;
}

/** Of a row that has not been tried out: builders aim at what is asked. */
const UNTRIED: Yield = {
  perSeverity: 1,
  severitySpread: 0.06,
  perLength: 1,
  lengthGain: 0,
  lengthSpread: 1.2,
  steadyFrom: 0,
};

type Tried = readonly [
  perSeverity: number,
  severitySpread: number,
  lengthGain: number,
  lengthSpread: number,
  perLength?: number,
  steadyFrom?: number,
];

/**
 * What came of requests of every row over its ranges, measured on finished faces. Keyed by face, type and, where it
 * matters, variant or process. A new look of a type wants its line learnt anew; the marks only depend on what is measured.
 */
const TRIED: Readonly<Record<string, Tried>> = {
  "cap/tungsten-spatter": [1, 0.2, 1.3, 2.1, 0.75],
  "cap/incorrect-weld-toe": [1, 0.2, -2.1, 1.2, 1.02],
  "root/tack-imperfection": [1, 0.2, 0.6, 4.2, 1.04],
  "root/overlap": [1.44, 0.5, 6.7, 6, 0.55],
  "cap/slag-residue/136": [0.9, 0.2, -1, 2.5, 0.8, 1],
  "cap/branching-cracks": [1, 0.2, -0.7, 1.4],
  "cap/chipping-mark": [1.01, 0.03, 1.4, 2.7, 0.74],
  "cap/clustered-porosity": [1.06, 0.02, -1.1, 0.4, 1.05],
  "cap/continuous-undercut": [1.03, 0.07, 1.9, 3.4, 0.87],
  "cap/crater-crack": [0.9, 0.13, 0, 0],
  "cap/crater-pipe": [1, 0.04, 0, 0],
  "cap/disconnected-cracks": [1, 0.2, -0.4, 0.4, 0.99],
  "cap/elongated-cavity": [1, 0.2, -0.3, 0.3, 0.97],
  "cap/excess-weld-metal": [1.01, 0.04, 3.1, 1.5, 1.05],
  "cap/grinding-mark": [1.01, 0.02, 0.2, 0.7, 0.93],
  "cap/incompletely-filled-groove": [0.97, 0.14, 0.6, 1.9, 0.92],
  "cap/intermittent-undercut": [1.02, 0.04, -3.3, 1.8, 1.04],
  "cap/irregular-width": [1, 0.2, -6.3, 6, 0.53],
  "cap/linear-porosity": [1, 0.05, 0.4, 0.3],
  "cap/longitudinal-crack": [1, 0.2, 0.2, 0.3],
  "cap/overlap": [1.14, 0.21, 3.9, 2.9, 0.96],
  "cap/poor-restart/gap": [0.96, 0.08, 0, 0],
  "cap/poor-restart/hump": [1.09, 0.12, 0, 0],
  "cap/radiating-cracks": [0.88, 0.09, 0, 0],
  "cap/inter-run-fusion": [0.94, 0.04, 1.4, 1.9, 0.97],
  "cap/inter-run-undercut": [1.04, 0.14, 2.5, 6, 0.58],
  "cap/irregular-surface": [1, 0.2, -1.3, 6, 0.73],
  "cap/sagging": [1.11, 0.14, 3.9, 1, 0.94],
  "cap/scaled-surface": [1, 0.2, -1.5, 2.4, 0.77],
  "cap/sidewall-fusion": [0.85, 0.12, 2, 3.4, 0.89],
  "cap/slag-residue": [1, 0.2, -0.1, 0.3, 0.98, 0.8],
  "cap/slag-residue/135": [0.9, 0.2, 0.5, 3, 0.55, 1.1],
  "cap/slag-residue/141": [0.9, 0.2, 0, 3, 0.7, 1.1],
  "cap/spatter": [1, 0.2, -4.4, 2.1, 1, 0.85],
  "cap/stray-arc": [1, 0.2, 0.1, 3, 0.63, 0.25],
  "cap/surface-pore": [1.15, 0.16, 0, 0],
  "cap/surface-porosity": [1.05, 0.04, 0, 0.3],
  "cap/temper-colour": [1, 0.2, -1.6, 4.6, 0.64, 0.7],
  "cap/torn-surface": [0.99, 0.02, 1.3, 3.7, 0.55],
  "cap/transverse-crack": [0.98, 0.07, 0, 0],
  "cap/underflushing": [1.01, 0.02, 3.9, 1.4, 0.57],
  "cap/worm-hole": [1, 0.2, 0.9, 0.3, 0.96],
  "root/branching-cracks": [1, 0.2, -0.9, 0.8, 1.04],
  "root/burn-through": [0.99, 0.12, 0, 0],
  "root/chipping-mark": [0.96, 0.06, -1.2, 0.6, 1.05],
  "root/crater-crack": [0.98, 0.13, 0, 0],
  "root/disconnected-cracks": [1, 0.2, -1.6, 0.5, 1.04],
  "root/elongated-cavity": [1, 0.2, -0.7, 0.3],
  "root/excess-penetration": [1, 0.02, 1.6, 2, 0.85],
  "root/grinding-mark": [1.03, 0.04, 1, 3.1, 0.94],
  "root/irregular-width": [1, 0.2, -2.5, 6, 0.68],
  "root/linear-porosity": [1.05, 0.05, 0, 0.3],
  "root/longitudinal-crack": [1, 0.2, -0.6, 0.5, 1.03],
  "root/poor-restart/gap": [1.03, 0.12, 0, 0],
  "root/poor-restart/hump": [1, 0.13, 0, 0],
  "root/radiating-cracks": [0.83, 0.12, 0, 0],
  "root/root-concavity": [1, 0.02, 1.6, 1.7, 0.99],
  "root/root-fusion": [0.93, 0.07, 4.6, 3.8, 0.78],
  "root/root-penetration": [0.96, 0.05, 1, 1, 0.9],
  "root/root-porosity": [1, 0.2, -1.8, 1.5, 1.05],
  "root/scaled-surface": [1, 0.2, -3.2, 3.7, 0.91],
  "root/shrinkage-groove": [1, 0.03, 0.1, 1.5, 0.96],
  "root/slag-residue": [0.95, 0.2, -0.5, 1.5, 0.95, 0.8],
  "root/slag-residue/135": [0.9, 0.2, -0.5, 2.5, 0.75, 1],
  "root/slag-residue/141": [0.9, 0.2, -0.5, 2.5, 0.75, 1],
  "root/spatter": [1, 0.2, -1.4, 6, 0.84, 0.75],
  "root/stray-arc": [1, 0.2, 2.4, 2.8, 0.45, 0.25],
  "root/surface-pore": [1.05, 0.04, 0, 0],
  "root/temper-colour": [1, 0.2, 1.6, 4.6, 0.61, 0.7],
  "root/torn-surface": [1, 0.02, -1.3, 2, 0.63],
  "root/transverse-crack": [0.95, 0.11, 0, 0],
  "root/tungsten-spatter": [1, 0.2, 0.3, 1.7, 0.85],
  "root/underflushing": [1.01, 0.02, 1.3, 2.4, 0.7],
};

/** What is to be expected of a row, with one of its variants or a process where that matters. */
export function yieldOf({ face, type }: Pick<FeatureRow, "face" | "type">, variant?: string, process?: Process): Yield {
  const row = `${face}/${type}`;
  const tried = TRIED[`${row}/${variant}`] ?? TRIED[`${row}/${process}`] ?? TRIED[row];
  if (!tried) return UNTRIED;
  const [perSeverity, severitySpread, lengthGain, lengthSpread, perLength = 1, steadyFrom = 0] = tried;
  return { perSeverity, severitySpread, perLength, lengthGain, lengthSpread, steadyFrom };
}
