export { convexHull, hullWithRoom } from "./hull";
export { keepWarm } from "./keep-warm";
export { clamp, ease, median, mix, roundTo } from "./scalar";
export { tabulate } from "./tabulate";
export type { Degrees, Mm, Px } from "./units";
