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
  "root/tack-imperfection": [1, 0.2, -2, 3, 0.8],
  "root/overlap": [1.3, 0.25, 0, 2.2],
  "cap/slag-residue/136": [0.9, 0.2, -1, 2.5, 0.8, 1],
  "cap/branching-cracks": [1, 0.2, -1, 1.1],
  "cap/chipping-mark": [1.01, 0.03, 0.6, 0.6],
  "cap/clustered-porosity": [1, 0.06, -0.8, 1.6],
  "cap/continuous-undercut": [0.97, 0.05, -1.6, 2.5],
  "cap/crater-crack": [0.98, 0.09, 0, 0],
  "cap/crater-pipe": [0.94, 0.03, 0, 0],
  "cap/disconnected-cracks": [1, 0.2, -1, 0.5],
  "cap/elongated-cavity": [1, 0.2, -0.4, 0.4],
  "cap/excess-weld-metal": [0.99, 0.06, 2, 3],
  "cap/grinding-mark": [1, 0.03, 0.9, 1.6],
  "cap/incompletely-filled-groove": [1, 0.17, -0.7, 4],
  "cap/intermittent-undercut": [0.95, 0.04, -1.6, 1.5],
  "cap/irregular-width": [1, 0.2, 0, 6, 0.7],
  "cap/linear-porosity": [1, 0.05, 0, 0.3],
  "cap/longitudinal-crack": [1, 0.2, 0.3, 0.4],
  "cap/overlap": [1.04, 0.2, 2.5, 2.3],
  "cap/poor-restart/gap": [1, 0.5, 0, 0],
  "cap/poor-restart/hump": [0.97, 0.09, 0, 0],
  "cap/radiating-cracks": [0.94, 0.09, 0, 0],
  "cap/inter-run-fusion": [0.91, 0.05, -1, 2.1],
  "cap/inter-run-undercut": [0.9, 0.05, -6, 6],
  "cap/irregular-surface": [1, 0.2, 0, 5, 0.78],
  "cap/sagging": [0.97, 0.07, -1.6, 2.5],
  "cap/scaled-surface": [1, 0.2, -8.5, 2, 0.96],
  "cap/sidewall-fusion": [0.97, 0.04, -0.5, 2],
  "cap/slag-residue": [0.95, 0.2, 0, 1.2, 0.97, 0.8],
  "cap/slag-residue/135": [0.9, 0.2, 0.5, 3, 0.55, 1.1],
  "cap/slag-residue/141": [0.9, 0.2, 0, 3, 0.7, 1.1],
  "cap/spatter": [1, 0.2, -1, 4, 0.75, 0.85],
  "cap/stray-arc": [1, 0.2, -1.5, 2, 1, 0.25],
  "cap/surface-pore": [1.1, 0.09, 0, 0],
  "cap/surface-porosity": [1.02, 0.08, 0, 0.2],
  "cap/temper-colour": [1, 0.2, 0, 4, 0.48, 0.7],
  "cap/torn-surface": [0.99, 0.02, -3, 3, 0.75],
  "cap/transverse-crack": [0.98, 0.06, 0, 0],
  "cap/underflushing": [1, 0.02, 0, 2, 0.69],
  "cap/worm-hole": [1, 0.2, 0.4, 0.5],
  "root/branching-cracks": [1, 0.2, -0.5, 0.9],
  "root/burn-through": [0.72, 0.15, 0, 0],
  "root/chipping-mark": [1.01, 0.05, 0.3, 0.7],
  "root/crater-crack": [0.85, 0.14, 0, 0],
  "root/disconnected-cracks": [1, 0.2, -0.8, 0.8],
  "root/elongated-cavity": [1, 0.2, -0.6, 0.3],
  "root/excess-penetration": [1, 0.02, 0.8, 3.3],
  "root/grinding-mark": [1.01, 0.03, 1.1, 1.5],
  "root/irregular-width": [1, 0.2, 0, 6, 0.7],
  "root/linear-porosity": [0.98, 0.04, 0, 0.3],
  "root/longitudinal-crack": [1, 0.2, 0.2, 0.3],
  "root/poor-restart/gap": [0.8, 0.4, 0, 0],
  "root/poor-restart/hump": [1.08, 0.12, 0, 0],
  "root/radiating-cracks": [0.93, 0.12, 0, 0],
  "root/root-concavity": [1, 0.02, 0.4, 0.9],
  "root/root-fusion": [0.92, 0.12, -3, 3.5],
  "root/root-penetration": [0.97, 0.09, -1.1, 1.3],
  "root/root-porosity": [1, 0.2, -0.8, 0.5],
  "root/scaled-surface": [1, 0.2, -8.5, 2, 0.98],
  "root/shrinkage-groove": [0.98, 0.02, -1.2, 1.2],
  "root/slag-residue": [0.95, 0.2, -0.5, 1.5, 0.95, 0.8],
  "root/slag-residue/135": [0.9, 0.2, -0.5, 2.5, 0.75, 1],
  "root/slag-residue/141": [0.9, 0.2, -0.5, 2.5, 0.75, 1],
  "root/spatter": [1, 0.2, -1, 4, 0.75, 0.75],
  "root/stray-arc": [1, 0.2, -1.5, 2, 1, 0.25],
  "root/surface-pore": [1.1, 0.09, 0, 0],
  "root/temper-colour": [1, 0.2, 0, 4, 0.48, 0.7],
  "root/torn-surface": [0.99, 0.02, -3, 3, 0.65],
  "root/transverse-crack": [0.94, 0.1, 0, 0],
  "root/tungsten-spatter": [1, 0.2, -0.5, 1.2],
  "root/underflushing": [1, 0.02, 0, 2.5, 0.7],
};

/** What is to be expected of a row, with one of its variants or a process where that matters. */
export function yieldOf({ face, type }: Pick<FeatureRow, "face" | "type">, variant?: string, process?: Process): Yield {
  const row = `${face}/${type}`;
  const tried = TRIED[`${row}/${variant}`] ?? TRIED[`${row}/${process}`] ?? TRIED[row];
  if (!tried) return UNTRIED;
  const [perSeverity, severitySpread, lengthGain, lengthSpread, perLength = 1, steadyFrom = 0] = tried;
  return { perSeverity, severitySpread, perLength, lengthGain, lengthSpread, steadyFrom };
}
