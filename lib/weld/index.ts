export { FACES, type Face, upOnScreen } from "./face";
export {
  BUTT_PLATE_LENGTH,
  BUTT_PLATE_WIDTH,
  type ButtJoint,
  grooveHalfWidth,
  POSITION_NAMES,
  POSITIONS,
  type Position,
  PROCESS_NAMES,
  PROCESSES,
  type Process,
} from "./joint";
