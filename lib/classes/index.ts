export { type ClassDetails, type ClassGroup, type ClassMember, classDetailsSchema } from "./class-group";
export { decodeList } from "./decode-list";
export { JOIN_CODE_LENGTH, JOIN_CODE_SIGNS, joinCodeSchema, shownJoinCode } from "./join-code";
export { type KnownAccount, type PlannedRow, planList } from "./plan-list";
export { LIST_MAX_LENGTH, LIST_MAX_ROWS, readList } from "./read-list";
