import type { ImperfectionType } from "../../imperfections";

/** What of an imperfection strikes the eye, mm: the size a gauge would give, its length along the weld, or its width. */
export type Measure = "size" | "length" | "width";

export interface Visibility {
  readonly measure: Measure;
  /** Measure at which half of those who look with care for the first time find it, mm. */
  readonly threshold: number;
  /** Below the first it counts as small, from the second on as large, mm. */
  readonly bands: readonly [smallBelow: number, largeFrom: number];
  /** How it stands out against what surrounds it: 0 ordinary, 1 dark or bright and odd, -1 of the weld's own colour and shape. */
  readonly contrast: number;
}

/**
 * How well each type is seen. First values by judgement, then corrected after blind trials of rendered specimens: common
 * practice, no source.
 */
export const VISIBILITY: Readonly<Record<ImperfectionType, Visibility>> = {
  "longitudinal-crack": { measure: "length", threshold: 11, bands: [16, 30], contrast: 0 },
  "transverse-crack": { measure: "width", threshold: 4, bands: [5, 8], contrast: 0 },
  "crater-crack": { measure: "width", threshold: 2.4, bands: [3.2, 5], contrast: 0.3 },
  "radiating-cracks": { measure: "width", threshold: 4, bands: [6, 9], contrast: 0.2 },
  "disconnected-cracks": { measure: "length", threshold: 8, bands: [12, 19], contrast: 0.2 },
  "branching-cracks": { measure: "length", threshold: 9, bands: [15, 25], contrast: 0.2 },
  "surface-pore": { measure: "size", threshold: 0.75, bands: [1, 1.7], contrast: 0.3 },
  "clustered-porosity": { measure: "size", threshold: 0.6, bands: [0.8, 1.3], contrast: 0.8 },
  "linear-porosity": { measure: "size", threshold: 0.6, bands: [0.8, 1.3], contrast: 0.6 },
  "surface-porosity": { measure: "size", threshold: 0.6, bands: [0.8, 1.3], contrast: 0.7 },
  "elongated-cavity": { measure: "length", threshold: 2.8, bands: [4.5, 8], contrast: 0.5 },
  "worm-hole": { measure: "length", threshold: 4.5, bands: [7, 13], contrast: 0.3 },
  "crater-pipe": { measure: "size", threshold: 0.8, bands: [1.1, 1.7], contrast: 0.4 },
  "root-porosity": { measure: "length", threshold: 4.5, bands: [8, 16], contrast: 0.6 },
  "slag-residue": { measure: "length", threshold: 4.5, bands: [7, 14], contrast: 0.2 },
  "sidewall-fusion": { measure: "size", threshold: 0.42, bands: [0.65, 1.05], contrast: 0.3 },
  "inter-run-fusion": { measure: "size", threshold: 0.45, bands: [0.6, 1], contrast: 0 },
  "root-fusion": { measure: "size", threshold: 0.42, bands: [0.65, 1.05], contrast: 0.4 },
  "root-penetration": { measure: "size", threshold: 0.5, bands: [0.9, 1.4], contrast: 0.7 },
  "continuous-undercut": { measure: "size", threshold: 0.36, bands: [0.48, 0.8], contrast: 0 },
  "intermittent-undercut": { measure: "size", threshold: 0.36, bands: [0.48, 0.8], contrast: 0 },
  "inter-run-undercut": { measure: "size", threshold: 0.38, bands: [0.5, 0.75], contrast: -0.2 },
  "shrinkage-groove": { measure: "size", threshold: 0.36, bands: [0.48, 0.75], contrast: -0.1 },
  "excess-weld-metal": { measure: "size", threshold: 3.4, bands: [3.8, 4.6], contrast: -0.6 },
  "excess-penetration": { measure: "size", threshold: 2.7, bands: [3.2, 4.1], contrast: 0 },
  "incompletely-filled-groove": { measure: "size", threshold: 0.5, bands: [0.8, 1.3], contrast: 0.3 },
  sagging: { measure: "size", threshold: 0.5, bands: [0.75, 1.2], contrast: -0.3 },
  "root-concavity": { measure: "size", threshold: 0.45, bands: [0.65, 1.05], contrast: -0.2 },
  overlap: { measure: "width", threshold: 0.9, bands: [1.4, 2.2], contrast: -0.2 },
  "burn-through": { measure: "width", threshold: 1.8, bands: [4.5, 7], contrast: 1 },
  "poor-restart": { measure: "size", threshold: 0.9, bands: [1.2, 1.8], contrast: 0 },
  "linear-misalignment": { measure: "size", threshold: 1.1, bands: [1.4, 2], contrast: -0.6 },
  "angular-misalignment": { measure: "length", threshold: 150, bands: [100, 350], contrast: -0.6 },
  "incorrect-weld-toe": { measure: "length", threshold: 22, bands: [26, 48], contrast: -0.6 },
  "irregular-width": { measure: "length", threshold: 18, bands: [26, 42], contrast: -0.4 },
  "irregular-surface": { measure: "length", threshold: 16, bands: [24, 42], contrast: -0.3 },
  "tack-imperfection": { measure: "length", threshold: 4, bands: [7, 12], contrast: 0 },
  "stray-arc": { measure: "length", threshold: 3, bands: [6, 10], contrast: 0.7 },
  spatter: { measure: "length", threshold: 8, bands: [16, 26], contrast: 0.6 },
  "tungsten-spatter": { measure: "length", threshold: 3, bands: [5, 10], contrast: 0.2 },
  "torn-surface": { measure: "size", threshold: 0.3, bands: [0.55, 1.1], contrast: 0.5 },
  "grinding-mark": { measure: "size", threshold: 0.24, bands: [0.35, 0.6], contrast: 0.4 },
  "chipping-mark": { measure: "size", threshold: 0.24, bands: [0.35, 0.55], contrast: 0.2 },
  underflushing: { measure: "size", threshold: 0.26, bands: [0.4, 0.8], contrast: 0.3 },
  "temper-colour": { measure: "length", threshold: 14, bands: [25, 50], contrast: 0.3 },
  "scaled-surface": { measure: "length", threshold: 7, bands: [14, 26], contrast: 0.3 },
};
