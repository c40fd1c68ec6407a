import type { ImperfectionType } from "../../imperfections";

/** Types of the catalogue that documents name by one word. */
export const CRACKS_BUT_CRATER = [
  "longitudinal-crack",
  "transverse-crack",
  "radiating-cracks",
  "disconnected-cracks",
  "branching-cracks",
] as const satisfies readonly ImperfectionType[];

export const CRACKS = [...CRACKS_BUT_CRATER, "crater-crack"] as const;

export const LACK_OF_FUSION = [
  "sidewall-fusion",
  "inter-run-fusion",
  "root-fusion",
] as const satisfies readonly ImperfectionType[];

/** Grooves in the plate along a toe, on the cap, the root or a fillet; not those between runs. */
export const UNDERCUTS = [
  "continuous-undercut",
  "intermittent-undercut",
  "shrinkage-groove",
] as const satisfies readonly ImperfectionType[];

/** Several pores recorded as one indication. */
export const PORE_GROUPS = [
  "clustered-porosity",
  "linear-porosity",
  "surface-porosity",
  "root-porosity",
] as const satisfies readonly ImperfectionType[];

/** Every hole that gas left in the surface. */
export const POROSITY = [
  "surface-pore",
  "elongated-cavity",
  "worm-hole",
  ...PORE_GROUPS,
] as const satisfies readonly ImperfectionType[];
