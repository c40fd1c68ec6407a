import type { ImperfectionType } from "../../imperfections";

interface Limits {
  /** Sizes at which one quality level or another begins to reject, mm. */
  readonly at: readonly number[];
  /** Uncertainty of measuring such a size on a weld, mm. Common practice, no source. */
  readonly uncertainty: number;
}

/**
 * Depths and heights at which ISO 5817:2014 draws a line for levels B, C and D, as far as they do not depend on the plate's
 * thickness or the weld's width (from memory). They stand in until acceptance criteria are data of a paper.
 */
export const LIMITS: Readonly<Partial<Record<ImperfectionType, Limits>>> = {
  "continuous-undercut": { at: [0.5, 1], uncertainty: 0.1 },
  "intermittent-undercut": { at: [0.5, 1], uncertainty: 0.1 },
  "inter-run-undercut": { at: [0.5, 1], uncertainty: 0.1 },
  "shrinkage-groove": { at: [0.5, 1, 2], uncertainty: 0.1 },
  "incompletely-filled-groove": { at: [0.5, 1, 2], uncertainty: 0.1 },
  sagging: { at: [0.5, 1, 2], uncertainty: 0.1 },
  "root-concavity": { at: [0.5, 1, 2], uncertainty: 0.1 },
  "root-penetration": { at: [2], uncertainty: 0.1 },
  "excess-weld-metal": { at: [5, 7, 10], uncertainty: 0.2 },
  "excess-penetration": { at: [3, 4, 5], uncertainty: 0.2 },
  "linear-misalignment": { at: [3, 4, 5], uncertainty: 0.2 },
  "surface-pore": { at: [2, 3], uncertainty: 0.2 },
};

/** True where measuring could not say on which side of a limit a size lies. */
export function isNearLimit(type: ImperfectionType, size: number | null): boolean {
  const limits = LIMITS[type];
  if (!limits || size === null) return false;
  return limits.at.some((limit) => Math.abs(size - limit) <= limits.uncertainty);
}
