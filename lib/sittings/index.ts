export { addTimeSchema, changeFactorSchema, factorSchema, reopenSchema, USUAL_FACTORS, voidSchema } from "./acts";
export { askingFor, MOST_ASKED, withoutAskedTypes } from "./asked-types";
export { averagedMark, isBorderline, standardErrorOf } from "./borderline";
export {
  ATTEMPT_KINDS,
  type AttemptKind,
  type Course,
  type CourseAttempt,
  type CourseRule,
  courseOf,
  courseRule,
  type PlacedAttempt,
  STANDINGS,
  type Standing,
} from "./course";
export { defaultPaper } from "./default-paper";
export type { KeptPaper, PaperVersion } from "./kept-paper";
export { lastDeadline } from "./last-deadline";
export { type NextInCourse, nextFor } from "./next-for";
export {
  type AskedTypes,
  CRITERIA_TABLES,
  DRAWN,
  FEEDBACKS,
  FORMS,
  MINUTES,
  PAPER_NAME_MOST,
  type Paper,
  type PaperPiece,
  type PaperSection,
  paperPieceSchema,
  paperSchema,
  storedPaperSchema,
} from "./paper";
export { type BlueprintChoice, FACES_OF, PIECE_CHOICES, type PieceChoices } from "./piece-choices";
export { RUN_REFUSALS, type RunRefusal, SITTING_REFUSALS, type SittingRefusal } from "./refusals";
export {
  type ClockFace,
  clockOf,
  type FactorChange,
  isOpen,
  isSettled,
  mayShowMarks,
  newRun,
  RUN_STATES,
  type RunState,
  type SectionRun,
  timingOf,
  type Voided,
} from "./run";
export type { RunEvent } from "./run-events";
export { whyShut } from "./run-work";
export { newSitting, SITTING_STATES, type Sitting, type SittingState, type SittingWithRuns } from "./sitting";
export type { Step } from "./step";
export { stepRun } from "./step-run";
export { type SittingEvent, stepSitting } from "./step-sitting";
export type { Pause } from "./stopped-time";
export { type TimelineRound, timeline } from "./timeline";
export { type AddedMinutes, allowed, deadline, elapsed, type Reopening, remaining, type Timing } from "./timing";
