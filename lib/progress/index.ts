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
export type { Counts } from "./tallies/counts";
export type { Moments } from "./tallies/moments";
export {
  addPiece,
  addPieceTallies,
  EMPTY_PIECE_TALLY,
  NOTHING,
  type PieceTally,
  pieceTallySchema,
} from "./tallies/piece-tally";
export { type SizeCounts, sizeOfStep } from "./tallies/size-counts";
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
