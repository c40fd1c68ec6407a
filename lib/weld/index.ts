export { FACES, type Face, upOnScreen } from "./face";
export {
  BUTT_PLATE_LENGTH,
  BUTT_PLATE_WIDTH,
  type ButtJoint,
  describeJoint,
  grooveHalfWidth,
  type JointFacts,
  POSITION_NAMES,
  POSITIONS,
  type Position,
  PROCESS_NAMES,
  PROCESSES,
  type Process,
} from "./joint";
