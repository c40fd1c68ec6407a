export {
  type AccountLine,
  accountLineSchema,
  LINE_KINDS,
  type LineKind,
  type PartAccount,
  type PlaceAccount,
  partAccountSchema,
  placeAccountSchema,
} from "./account";
export {
  type DimensionLine,
  dimensionLineSchema,
  type StatementLine,
  statementLineSchema,
} from "./dimension-line";
export { inTenths, marksInHundredths } from "./figures";
export { storedResultSchema } from "./older-result";
export { type AskedQuestion, type QuestionLine, questionLineSchema } from "./question-line";
export { PART_SHARES, PARTS, type Part, RULE, RULE_VERSION } from "./rule";
export { RULE_CHAPTERS, type RuleChapter, WORTH_REPORTING } from "./rule-text";
export {
  type DimensionsResult,
  dimensionsResultSchema,
  earnedTogether,
  type IndicationsResult,
  indicationsResultSchema,
  isPass,
  marksSchema,
  type QuestionsResult,
  questionsResultSchema,
  type SectionResult,
  type SectionTotals,
  type SentencesResult,
  sectionResultSchema,
  sectionTotalsSchema,
  sentencesResultSchema,
  shownMark,
} from "./section-result";
export {
  DEFAULT_PAPER,
  JOINT_OF,
  MARKED_SECTIONS,
  type MarkedSection,
  type PartWeights,
  SECTION_PARTS,
  SECTIONS,
  type Section,
  type SectionOfPaper,
  type SectionPart,
} from "./sections";
export { type Ruled, type SentenceLine, sentenceLineSchema } from "./sentence-line";
export {
  DEFAULT_DIMENSION_TOLERANCES,
  DEFAULT_TOLERANCES,
  type DimensionTolerances,
  SIZE_UNCERTAINTY,
  type Tolerance,
  type Tolerances,
  toleranceSchema,
  tolerancesSchema,
} from "./tolerances";
