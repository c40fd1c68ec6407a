export { type HeightAt, onFace, seenPlace } from "./aspect";
export { type BlankField, blanksOf, checkForHandIn, type HandInCheck, nearlyAlike } from "./check-report";
export {
  CLOSE_LOOK_SCALE,
  type Coverage,
  coverageOf,
  NOTHING_SEEN,
  type Stretch,
  seenStretches,
  shareSeen,
  withLook,
} from "./coverage";
export { describePlace, type Modifiers, moveCursor, sideNames, stepOf } from "./cursor";
export {
  type CallChange,
  type DrawnExtent,
  startWriting,
  type Writing,
  type WritingEvent,
  write,
} from "./edit-report";
export { byFamily, FAMILY_NAMES, findTypes } from "./find-types";
export { rowsOfFlags } from "./flags";
export {
  CORNER_USES,
  type CornerUse,
  cornerUseOf,
  firstTurn,
  hasScale,
  isInCorner,
  isStanding,
  settingsOf,
  TRAYS,
  type TrayKind,
  type TrayPlacement,
} from "./gauge-tray";
export { type GaugeOut, type Measuring, type MeasuringEvent, measure, NOTHING_OUT } from "./hold-gauge";
export { LENS_GLASS, lensScale, underLens } from "./lens";
export { type Tick, ticksBetween } from "./ruler";
export { isUnsent, type Saving, type SavingEvent, save, startSaving, waitBeforeSending } from "./saving";
export { type Goal, goalsOf, takenOver } from "./take-over";
export {
  carryTorch,
  eighthOfTorch,
  exposureUnder,
  FIRST_TORCH,
  heightOfTorch,
  isBehindPlate,
  lampPosition,
  lightFrom,
  MAX_ELEVATION,
  MIN_ELEVATION,
  sideOfTorch,
  stepTorch,
  TORCH_DISTANCE,
  TORCH_HEIGHTS,
  TORCH_SIDES,
  type Torch,
  type TorchHeight,
  torchOnScreen,
  turnTorch,
  WORKSHOP_LIGHT,
} from "./torch";
export {
  bounded,
  centredOn,
  isOnPlate,
  MAX_SCALE,
  ontoPlate,
  type Place,
  panned,
  resized,
  revealing,
  type ScreenPoint,
  type Seen,
  seenFrom,
  shiftBetween,
  stretchInSight,
  toPlace,
  toScreen,
  turnedTo,
  type Viewport,
  wholePlate,
  wholePlateScale,
  zoomed,
} from "./viewport";
