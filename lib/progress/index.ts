export { type ClassStanding, classStanding } from "./class/class-standing";
export { type FoundOf, isJudged, JUDGED_FROM, type MissedType, missedTypes } from "./class/missed-types";
export { type MarksBySection, readinessOf, type SectionReadiness } from "./class/readiness";
export {
  type AnalysedItem,
  ASKED_FROM,
  analyseSection,
  type HandedInSection,
  type SectionAnalysis,
} from "./class/section-account";
export { isOfMost, type Misread, type ToTeach, toTeach } from "./class/to-teach";
export { type ToSet, worthSetting } from "./class/worth-setting";
export {
  type CalibrationRow,
  type Correction,
  calibrate,
  calibrationRows,
  calibrationStep,
  shiftFor,
  sizesOfStep,
} from "./learner/calibrate";
export { AIM, type Candidate, type CandidateIndication, type LookAlikes, weaknessWith } from "./learner/candidate";
export {
  type Choice,
  chooseNext,
  NEXT,
  type PracticeAims,
  practiceAims,
  type Reason,
  reasonOf,
} from "./learner/choose-next";
export { afterPractice, type Due, dueAt, dueness } from "./learner/due";
export {
  type LearnerInOrder,
  learnerInOrderSchema,
  NEW_IN_ORDER,
  type PlacedSection,
  takenIn,
} from "./learner/in-order";
export { afterSection, type Learner, learnerSchema, NEW_LEARNER } from "./learner/learner";
export { afterOutcome, chanceOf, NEW_SKILL, type Skill, type Standing, standingOf, timesSeen } from "./learner/skill";
export { LOOKS, type Look, type PieceWish, wishesFor } from "./learner/wishes";
export { ANY_CLASS, type ChanceToPass, type ClassMarks, chanceToPass, classMarks } from "./marks/chance-to-pass";
export { type MarkDistribution, markDistribution } from "./marks/distribution";
export { partScores } from "./marks/part-scores";
export { type CountingAnswer, countingAnswers } from "./observations/answers";
export { findsEarlyAndLate, THIRDS, type Third } from "./observations/early-and-late";
export {
  type ClutterObservation,
  clutterObservationSchema,
  type DimensionObservation,
  dimensionObservationSchema,
  EYE_MEASURES,
  type EyeMeasure,
  type FalseCallObservation,
  falseCallObservationSchema,
  isClean,
  type QuestionObservation,
  questionObservationSchema,
  SENTENCE_VERDICTS,
  type SectionObservations,
  type SentenceVerdict,
  sectionObservationsSchema,
  type TruthObservation,
  truthObservationSchema,
} from "./observations/observation";
export { type MarkedWork, observationsOf, type SeenClutter, type SeenTruth } from "./observations/observations-of";
export { stepsAlong } from "./observations/steps-along";
export {
  type AnsweredItem,
  analyseItems,
  type ItemAnalysis,
  type OptionCount,
  type Suspicion,
} from "./questions/item-analysis";
export { itemsOf, type SharedItem } from "./questions/items-of";
export {
  addPooledQuestions,
  type PooledQuestion,
  pooledQuestionSchema,
  pooledQuestions,
} from "./questions/pooled";
export { type Reliability, reliabilityOf } from "./questions/reliability";
export { type Agreement, agreementOf } from "./statistics/agreement";
export {
  chanceAt,
  type DetectionCurve,
  detectionCurve,
  findsBySize,
  type OpenInterval,
  type SizedFinds,
  type WhyNoCurve,
} from "./statistics/detection-by-size";
export { detectionByType, type TypeDetection } from "./statistics/detection-by-type";
export { ENOUGH } from "./statistics/enough";
export { type FalseCallRate, type FalseCalls, falseCallRate, falseCallsOf } from "./statistics/false-calls";
export { cohenKappa, type Kappa, squareTable } from "./statistics/kappa";
export { type Confusion, confusions, type NamingMatrix, namingMatrix } from "./statistics/naming";
export { clusteredShare, type Share, shareOf, surelyAtMost } from "./statistics/share";
export { detectionAgainstClutter, type SignalDetection, signalDetection } from "./statistics/signal-detection";
export { dimensionSizing, type Placing, placing, type Sizing, sizingByKind, sizingByType } from "./statistics/sizing";
export type { Counts } from "./tallies/counts";
export { addSections, EMPTY_LEARNER_TALLY, type LearnerTally, wholeTally } from "./tallies/learner-tally";
export type { Moments } from "./tallies/moments";
export {
  EMPTY_OVERVIEW,
  type Overview,
  overviewOf,
  overviewSchema,
  sumOverviews,
  type TypeCounts,
} from "./tallies/overview";
export {
  addPiece,
  addPieceTallies,
  EMPTY_PIECE_TALLY,
  type PieceTally,
  pieceTallySchema,
} from "./tallies/piece-tally";
export { NOTHING } from "./tallies/section-counts";
export { addSizeCounts, type SizeCounts, sizeOfStep } from "./tallies/size-counts";
export { addObservations, addTallies, EMPTY_TALLY, type Tally } from "./tallies/tally";
export {
  addTruth,
  addTypeTallies,
  type CallName,
  EMPTY_TYPE_TALLY,
  mergeTypeTallies,
  type TypeTallies,
  type TypeTally,
  typeTallySchema,
  UNNAMED,
} from "./tallies/type-tally";
export { OBSERVATION_VERSION, PROGRESS_VERSION } from "./version";
