export { type Look, noteLook } from "./note-look";
export { type PackedTrail, packedTrailSchema, packTrail, unpackTrail } from "./packed";
export { BIN, IDLE_AFTER, LEAST_LOOK } from "./thresholds";
export {
  LOOKS,
  type LookKind,
  lookKind,
  sidesOf,
  type TimeInSight,
  timeAtPlace,
  timeOnStretch,
} from "./time-in-sight";
export { BEAT, LINES, merged, NO_TRAIL, type Trail } from "./trail";
