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
  "cap/incorrect-weld-toe": [1, 0.2, -0.57, 1.26, 0.98],
  "root/tack-imperfection": [1, 0.2, 0.6, 4.2, 1.04],
  "root/overlap": [1.44, 0.5, 6.7, 6, 0.55],
  "cap/slag-residue/136": [0.9, 0.2, -1, 2.5, 0.8, 1],
  "cap/branching-cracks": [1, 0.2, -0.7, 1.4],
  "cap/chipping-mark": [0.95, 0.05, 1.6, 1.9, 0.64],
  "cap/clustered-porosity": [1, 0.04, 0.64, 1.31, 0.82],
  "cap/continuous-undercut": [1.01, 0.04, -0.96, 6, 0.97],
  "cap/crater-crack": [0.85, 0.17, 0, 0],
  "cap/crater-pipe": [1, 0.03, 0, 0],
  "cap/disconnected-cracks": [1, 0.2, -0.4, 0.4, 0.99],
  "cap/elongated-cavity": [1, 0.2, -0.81, 0.33, 1.1],
  "cap/excess-weld-metal": [0.96, 0.06, 1.17, 3.72, 1.1],
  "cap/grinding-mark": [1.01, 0.02, 0.8, 1.95, 0.97],
  "cap/incompletely-filled-groove": [0.94, 0.19, -0.26, 3.34, 1.01],
  "cap/intermittent-undercut": [0.95, 0.08, -0.18, 6, 0.81],
  "cap/irregular-width": [1, 0.2, -6.3, 6, 0.53],
  "cap/linear-porosity": [1.04, 0.05, 0.1, 0.3],
  "cap/longitudinal-crack": [1, 0.2, 0.06, 0.54],
  "cap/overlap": [1.11, 0.2, 2.09, 2.62, 1.1],
  "cap/poor-restart/gap": [0.92, 0.1, 0, 0],
  "cap/poor-restart/hump": [0.99, 0.17, 0, 0],
  "cap/radiating-cracks": [0.88, 0.09, 0, 0],
  "cap/inter-run-fusion": [0.93, 0.05, 0.28, 2.49, 0.95],
  "cap/inter-run-undercut": [1.05, 0.11, 0.6, 6, 0.79],
  "cap/irregular-surface": [1, 0.2, -1.3, 6, 0.73],
  "cap/sagging": [1.12, 0.32, 3.22, 6, 0.97],
  "cap/scaled-surface": [1, 0.2, -1.5, 2.4, 0.77],
  "cap/sidewall-fusion": [1.01, 0.08, -0.13, 5.47, 0.89],
  "cap/slag-residue": [1, 0.2, -0.1, 0.3, 0.98, 0.8],
  "cap/slag-residue/135": [0.9, 0.2, 0.5, 3, 0.55, 1.1],
  "cap/slag-residue/141": [0.9, 0.2, 0, 3, 0.7, 1.1],
  "cap/spatter": [1, 0.2, 0.52, 4.49, 0.84, 0.85],
  "cap/stray-arc": [1, 0.2, -0.36, 2.61, 1, 0.25],
  "cap/surface-pore": [1.02, 0.04, 0, 0],
  "cap/surface-porosity": [1.05, 0.04, 0, 0.3],
  "cap/temper-colour": [1, 0.2, 6.98, 2.93, 0.68, 0.7],
  "cap/torn-surface": [1.03, 0.03, -0.25, 1.9, 0.98],
  "cap/transverse-crack": [1.02, 0.03, 0, 0],
  "cap/underflushing": [1.01, 0.02, -1.1, 3.8, 0.73],
  "cap/worm-hole": [1, 0.2, 0, 0.54],
  "root/branching-cracks": [1, 0.2, -0.9, 0.8, 1.04],
  "root/burn-through": [0.92, 0.15, 0, 0],
  "root/chipping-mark": [0.95, 0.05, 1.6, 1.9, 0.64],
  "root/crater-crack": [0.72, 0.11, 0, 0],
  "root/disconnected-cracks": [1, 0.2, -1.6, 0.5, 1.04],
  "root/elongated-cavity": [1, 0.2, -0.38, 0.33],
  "root/excess-penetration": [1, 0.02, -1.6, 1.85, 1.04],
  "root/grinding-mark": [1.01, 0.02, 0.8, 1.95, 0.97],
  "root/irregular-width": [1, 0.2, -2.5, 6, 0.68],
  "root/linear-porosity": [1.04, 0.06, 0.03, 0.3],
  "root/longitudinal-crack": [1, 0.2, -0.09, 0.3, 1.01],
  "root/poor-restart/gap": [0.99, 0.12, 0, 0],
  "root/poor-restart/hump": [1.03, 0.07, 0, 0],
  "root/radiating-cracks": [0.83, 0.12, 0, 0],
  "root/root-concavity": [1.04, 0.03, 0.84, 1.27, 0.97],
  "root/root-fusion": [0.98, 0.21, -1.95, 5.65, 1.05],
  "root/root-penetration": [1, 0.12, 2.3, 3.19, 0.82],
  "root/root-porosity": [1, 0.2, 0.13, 0.3, 0.95],
  "root/scaled-surface": [1, 0.2, -3.2, 3.7, 0.91],
  "root/shrinkage-groove": [0.98, 0.07, -2.99, 2.12, 0.99],
  "root/slag-residue": [0.95, 0.2, -0.09, 0.3, 0.96, 0.8],
  "root/slag-residue/135": [0.9, 0.2, -0.5, 2.5, 0.75, 1],
  "root/slag-residue/141": [0.9, 0.2, -0.5, 2.5, 0.75, 1],
  "root/spatter": [1, 0.2, -9.25, 6, 1.1, 0.75],
  "root/stray-arc": [1, 0.2, -0.26, 2.67, 1, 0.25],
  "root/surface-pore": [1.05, 0.07, 0, 0],
  "root/temper-colour": [1, 0.2, 1.6, 4.6, 0.61, 0.7],
  "root/torn-surface": [1.03, 0.03, -0.25, 1.9, 0.98],
  "root/transverse-crack": [0.95, 0.11, 0, 0],
  "root/tungsten-spatter": [1, 0.2, 0.3, 1.7, 0.85],
  "root/underflushing": [1.01, 0.02, -1.1, 3.8, 0.73],
};

/** What is to be expected of a row, with one of its variants or a process where that matters. */
export function yieldOf({ face, type }: Pick<FeatureRow, "face" | "type">, variant?: string, process?: Process): Yield {
  const row = `${face}/${type}`;
  const tried = TRIED[`${row}/${variant}`] ?? TRIED[`${row}/${process}`] ?? TRIED[row];
  if (!tried) return UNTRIED;
  const [perSeverity, severitySpread, lengthGain, lengthSpread, perLength = 1, steadyFrom = 0] = tried;
  return { perSeverity, severitySpread, perLength, lengthGain, lengthSpread, steadyFrom };
}
