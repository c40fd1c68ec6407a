import { ALIGNMENT } from "./iso5817-rows/alignment";
import { CRACKS_AND_PORES } from "./iso5817-rows/cracks-and-pores";
import type { LevelRow } from "./iso5817-rows/level-row";
import { ROOT_AND_RESTARTS } from "./iso5817-rows/root-and-restarts";
import { THROATS_AND_SURFACE } from "./iso5817-rows/throats-and-surface";
import { TOES_AND_REINFORCEMENT } from "./iso5817-rows/toes-and-reinforcement";

/**
 * Table 1 of ISO 5817:2014, the rows an eye can meet and a few beside them for completeness. Rows of `types: []` speak of what
 * the catalogue does not have.
 */
export const ISO_5817_ROWS: readonly LevelRow[] = [
  ...CRACKS_AND_PORES,
  ...TOES_AND_REINFORCEMENT,
  ...ROOT_AND_RESTARTS,
  ...THROATS_AND_SURFACE,
  ...ALIGNMENT,
];
