export { iso, isoOrNull } from "./common";
export { type KnownPiece, recordedPiece } from "./piece";
export { recordedProgress } from "./progress";
export {
  type LearnerRecord,
  learnerRecordSchema,
  RECORD_FORMAT,
  RECORD_VERSION,
  type RecordPart,
} from "./record";
export { recordedSitting } from "./sitting";
export { csvWriter, jsonWriter } from "./text";
