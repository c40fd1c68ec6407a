export { type Contacting, contactAt, drawnBack, nearerBy, slideTo } from "./contact";
export { drawGauge } from "./drawing/draw-gauge";
export { drawComb, drawLeaf, drawRule } from "./drawing/flat-tools";
export { drawBlade } from "./drawing/in-corner";
export type { Corner, Drawing, Label, LensBox, Mark, Shape, ShapeRole, Stroke } from "./drawing/shapes";
export { type Elevation, lookAlong } from "./elevation";
export { type ExplainedReading, explainReading, explainVernier } from "./explain";
export { gapAt, type LeafFit, tryLeaf } from "./feeler";
export { type BladeFit, type BladePlacement, type BladeTrial, tryBlade } from "./fillet-blade";
export { type Heights, heightsOfFace, type OtherFace } from "./heights";
export {
  BLADE_SIZES,
  FEELER_LEAVES,
  GAUGE_KINDS,
  GAUGES,
  type GaugeFacts,
  type GaugeKind,
  type MeasuringKind,
  STEEPEST,
  type Tip,
} from "./kinds";
export type { SeatingRandom } from "./noise";
export {
  BEAM,
  type CaliperPlacement,
  type FeetPlacement,
  FILLET_USES,
  type FilletPlacement,
  type FilletUse,
  feetOf,
  type GaugePlacement,
  type HookPlacement,
  SETTINGS,
  STANCES,
  type Stance,
  takeFromTray,
  withinLimits,
} from "./placement";
export { type Pose, toSection } from "./pose";
export { type Pin, pressComb } from "./profile-comb";
export { REFUSAL_REASONS, REFUSALS, type Refusal, type RefusalCode } from "./refusals";
export type { Contact, Seating } from "./seat";
export { cutSection, type SectionPoint } from "./section";
export { type Standing, setDown } from "./set-down";
export { type RuleReading, readRule } from "./steel-rule";
export { offSquare, placeOn, type SectionPair, type Spot } from "./strip";
export { liftOf } from "./tip";
export {
  missOfLine,
  readVernier,
  scaleLines,
  TENTHS,
  type Vernier,
  type VernierReading,
  vernierLines,
} from "./vernier";
