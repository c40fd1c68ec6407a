export { layWeld } from "./lay-weld";
export { paintWeld } from "./paint-weld";
export { type FaceLayout, planFace, runHalfWidth } from "./plan-face";
export type { RunStops } from "./welding-story";
