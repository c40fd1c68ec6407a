export { DIMENSION_FACTS, DIMENSIONS, type Dimension, type DimensionFacts } from "./dimensions";
export { FACES, type Face, SURFACE_FACES, type SurfaceFace, upOnScreen } from "./face";
export {
  FILLET_HALF_WIDTH,
  FILLET_LENGTH,
  FILLET_PROCESSES,
  type FilletJoint,
  type FilletProcess,
  type FilletSize,
  requiredLeg,
  requiredThroat,
} from "./fillet";
export { type FilletSizes, filletSizes, flatThroat, type SectionPoint } from "./fillet-section";
export {
  BUTT_PLATE_LENGTH,
  BUTT_PLATE_WIDTH,
  type ButtJoint,
  describeJoint,
  FILLET_POSITIONS,
  type FilletPosition,
  grooveHalfWidth,
  type JointFacts,
  type JointPosition,
  POSITION_NAMES,
  POSITIONS,
  type Position,
  PROCESS_NAMES,
  PROCESSES,
  type Process,
} from "./joint";
