export { CUT_ROWS } from "./cut-rows";
export { NEUTRAL_ROWS } from "./neutral-rows";
export { type FeatureRow, type Likelihood, type Range, SITES, type Site } from "./row";
export { SHAPED_ROWS } from "./shaped-rows";
