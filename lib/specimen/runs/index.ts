export { layWeld } from "./lay-weld";
export { paintWeld } from "./paint-weld";
export { type FaceLayout, planFace, runHalfWidth } from "./plan-face";
export { POSITION_STYLES } from "./position-style";
export type { HeatHabit, Range } from "./process-style";
export { PROCESS_STYLES } from "./process-styles";
export type { RunStops } from "./welding-story";
