export { type ActOf, type ReviewAct, type ReviewContent, type ReviewKind, reviewContentSchema } from "./act";
export { type Difference, differences } from "./differences";
export {
  annulInput,
  markAgainInput,
  marksWithin,
  overruleInput,
  questionInput,
  reviewReason,
  takeBackInput,
} from "./inputs";
export { LINE_LISTS, type LineId, type LineList, type LineOfResult, lineId, linesOf } from "./lines";
export { resultOfBase } from "./result-of-base";
export { type ReviewedLine, type ReviewedSection, reviewed } from "./reviewed";
export { canBeTakenBack, type StandingActs, standingActs } from "./standing-acts";
