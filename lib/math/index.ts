export { betaQuantile, incompleteBeta } from "./distributions/beta";
export { lowerGamma } from "./distributions/gamma";
export { normalCdf, normalDensity, normalQuantile, twoSidedZ } from "./distributions/normal";
export { solveRising } from "./distributions/solve";
export { studentCdf, twoSidedT } from "./distributions/student";
export {
  type Cluster,
  type ClusterSpread,
  clusterSpread,
  effectiveShare,
  effectiveShareBy,
  shareForFew,
} from "./estimates/clusters";
export { CONFIDENCE, type Interval } from "./estimates/interval";
export {
  fitLogistic,
  isOverlapping,
  type LogisticLine,
  logistic,
  logit,
  logLikelihoodOf,
  profileThrough,
  type Trials,
} from "./estimates/logistic";
export { clopperPearsonInterval, clopperPearsonLower, trialsToShow, wilsonInterval } from "./estimates/proportion";
export { poissonInterval } from "./estimates/rate";
export { convexHull, hullWithRoom } from "./hull";
export { keepWarm } from "./keep-warm";
export { clamp, ease, hypot, median, mix, roundTo } from "./scalar";
export { tabulate } from "./tabulate";
export type { Degrees, Mm, Px } from "./units";
