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
  "longitudinal-crack": { measure: "length", threshold: 15, bands: [16, 28], contrast: -0.2 },
  "transverse-crack": { measure: "width", threshold: 5, bands: [5, 8], contrast: -0.1 },
  "crater-crack": { measure: "width", threshold: 2.6, bands: [3, 4.5], contrast: 0.1 },
  "radiating-cracks": { measure: "width", threshold: 5, bands: [5.5, 8.5], contrast: 0 },
  "disconnected-cracks": { measure: "length", threshold: 11, bands: [11, 18], contrast: 0 },
  "branching-cracks": { measure: "length", threshold: 12, bands: [14, 23], contrast: 0 },
  "surface-pore": { measure: "size", threshold: 0.8, bands: [0.75, 1.2], contrast: 0.1 },
  "clustered-porosity": { measure: "size", threshold: 0.62, bands: [0.65, 1.1], contrast: 0.4 },
  "linear-porosity": { measure: "size", threshold: 0.65, bands: [0.65, 1.1], contrast: 0.3 },
  "surface-porosity": { measure: "size", threshold: 0.62, bands: [0.65, 1.1], contrast: 0.4 },
  "elongated-cavity": { measure: "length", threshold: 3.2, bands: [3.5, 6.5], contrast: 0.3 },
  "worm-hole": { measure: "length", threshold: 5.5, bands: [6, 11], contrast: 0.1 },
  "crater-pipe": { measure: "size", threshold: 0.85, bands: [0.85, 1.3], contrast: 0.2 },
  "root-porosity": { measure: "length", threshold: 7, bands: [8, 14], contrast: 0.3 },
  "slag-residue": { measure: "length", threshold: 7, bands: [7, 13], contrast: 0 },
  "sidewall-fusion": { measure: "size", threshold: 0.5, bands: [0.5, 0.8], contrast: 0.2 },
  "inter-run-fusion": { measure: "size", threshold: 0.5, bands: [0.55, 0.9], contrast: -0.1 },
  "root-fusion": { measure: "size", threshold: 0.5, bands: [0.52, 0.85], contrast: 0.2 },
  "root-penetration": { measure: "size", threshold: 0.6, bands: [0.85, 1.3], contrast: 0.5 },
  "continuous-undercut": { measure: "size", threshold: 0.38, bands: [0.38, 0.6], contrast: -0.1 },
  "intermittent-undercut": { measure: "size", threshold: 0.38, bands: [0.38, 0.6], contrast: -0.1 },
  "inter-run-undercut": { measure: "size", threshold: 0.45, bands: [0.46, 0.7], contrast: -0.3 },
  "shrinkage-groove": { measure: "size", threshold: 0.4, bands: [0.42, 0.66], contrast: -0.2 },
  "excess-weld-metal": { measure: "size", threshold: 3.4, bands: [3.8, 4.6], contrast: -0.6 },
  "excess-penetration": { measure: "size", threshold: 2.7, bands: [3.2, 4.1], contrast: 0 },
  "incompletely-filled-groove": { measure: "size", threshold: 0.58, bands: [0.65, 1.0], contrast: 0.2 },
  sagging: { measure: "size", threshold: 0.62, bands: [0.65, 1.05], contrast: -0.5 },
  "root-concavity": { measure: "size", threshold: 0.55, bands: [0.55, 0.9], contrast: -0.4 },
  overlap: { measure: "width", threshold: 1.2, bands: [1.3, 2.0], contrast: -0.4 },
  "burn-through": { measure: "width", threshold: 1.6, bands: [3, 5.5], contrast: 1 },
  "poor-restart": { measure: "size", threshold: 1.15, bands: [1.15, 1.7], contrast: -0.1 },
  "linear-misalignment": { measure: "size", threshold: 1.1, bands: [1.4, 2], contrast: -0.6 },
  "angular-misalignment": { measure: "length", threshold: 150, bands: [100, 350], contrast: -0.6 },
  "incorrect-weld-toe": { measure: "length", threshold: 30, bands: [30, 52], contrast: -0.8 },
  "irregular-width": { measure: "length", threshold: 22, bands: [26, 42], contrast: -0.5 },
  "irregular-surface": { measure: "length", threshold: 14, bands: [18, 36], contrast: -0.3 },
  "tack-imperfection": { measure: "length", threshold: 4, bands: [7, 12], contrast: 0 },
  "stray-arc": { measure: "length", threshold: 5.5, bands: [5.5, 9], contrast: 0.3 },
  spatter: { measure: "length", threshold: 14, bands: [16, 26], contrast: 0.4 },
  "tungsten-spatter": { measure: "length", threshold: 4.5, bands: [5, 9], contrast: 0.1 },
  "torn-surface": { measure: "size", threshold: 0.45, bands: [0.5, 1], contrast: 0.4 },
  "grinding-mark": { measure: "size", threshold: 0.36, bands: [0.36, 0.58], contrast: 0 },
  "chipping-mark": { measure: "size", threshold: 0.34, bands: [0.34, 0.5], contrast: 0 },
  underflushing: { measure: "size", threshold: 0.46, bands: [0.45, 0.75], contrast: -0.1 },
  "temper-colour": { measure: "length", threshold: 13, bands: [14, 21], contrast: 0.1 },
  "scaled-surface": { measure: "length", threshold: 10, bands: [14, 26], contrast: 0.3 },
};
