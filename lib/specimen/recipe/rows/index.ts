export { CUT_ROWS } from "./cut-rows";
export { NEUTRAL_ROWS } from "./neutral-rows";
export type { FeatureRow, Likelihood, Range, Site } from "./row";
export { SHAPED_ROWS } from "./shaped-rows";
