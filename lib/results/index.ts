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
export { PART_SHARES, PARTS, type Part, RULE, RULE_VERSION } from "./rule";
export { RULE_CHAPTERS, type RuleChapter, WORTH_REPORTING } from "./rule-text";
export {
  isPass,
  marksSchema,
  type ReportResult,
  reportResultSchema,
  type SectionResult,
  type SectionTotals,
  sectionResultSchema,
  sectionTotalsSchema,
  shownMark,
} from "./section-result";
export {
  DEFAULT_PASS_MARK,
  DEFAULT_TOLERANCES,
  type Tolerance,
  type Tolerances,
  toleranceSchema,
  tolerancesSchema,
} from "./tolerances";
