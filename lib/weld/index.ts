export {
  ASKED_DIMENSIONS,
  type AskedDimension,
  DIMENSION_FACTS,
  DIMENSIONS,
  type Dimension,
  type DimensionFacts,
  nameAsked,
} from "./dimensions";
export { type EndView, type EndViews, endViewsSchema, feeledGap } from "./end-view";
export {
  ASPECTS,
  type Aspect,
  FACES,
  type Face,
  FILLET_PLATES,
  type FilletPlate,
  faceOf,
  SURFACE_FACES,
  type SurfaceFace,
  sideLetter,
  upOnScreen,
} from "./face";
export {
  FILLET_HALF_WIDTH,
  FILLET_LENGTH,
  FILLET_PLATE_BEYOND,
  FILLET_PLATE_SEEN,
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
  FILLET_POSITIONS,
  type FilletPosition,
  grooveHalfWidth,
  type JointPosition,
  POSITION_NAMES,
  POSITIONS,
  type Position,
  PROCESS_NAMES,
  PROCESSES,
  type Process,
} from "./joint";
export { type ButtFacts, describeJoint, type FilletFacts, type JointFacts } from "./joint-facts";
export {
  type Extent,
  extentOf,
  FILLET_ENDS,
  FILLET_STATIONS,
  JOINT_KINDS,
  type JointKind,
  jointOf,
  PIECES,
  type PieceFacts,
} from "./pieces";
export {
  ANSWER_NAMES,
  type Answer,
  STATEMENT_ANSWERS,
  STATEMENT_FACTS,
  STATEMENT_LIMITS,
  STATEMENTS,
  type Stated,
  type Statement,
  type StatementFacts,
  statedSchema,
} from "./statements";
