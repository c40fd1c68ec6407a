export { iso, isoOrNull } from "./common";
export { type KnownPiece, recordedPiece } from "./piece";
export { recordedProgress } from "./progress";
export {
  RECORD_FORMAT,
  RECORD_VERSION,
  type RecordPart,
  type WholeRecord,
  wholeRecordSchema,
} from "./record";
export { recordedSitting } from "./sitting";
export { csvWriter, jsonWriter } from "./text";
