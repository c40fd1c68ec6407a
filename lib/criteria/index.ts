export { assess, assessPiece, type PieceSentence, type Sentence } from "./assess";
export { CAUTION } from "./caution";
export {
  type Asked,
  askedOf,
  COMPARED_WELD,
  type ComparedSet,
  type Comparison,
  compare,
  comparedCriteria,
  comparedTypes,
  type Stretch,
  type Subject,
} from "./compare";
export {
  type Criteria,
  type Criterion,
  criteriaSchema,
  EVIDENCE,
  EVIDENCE_NAMES,
  type Evidence,
  type SectionRule,
} from "./criteria";
export { withUnit } from "./figures";
export { type Finding, findingText, OUTCOME_NAMES, OUTCOMES, type Outcome, type Reason } from "./finding";
export { describeFormula, type Formula, workOut } from "./formula";
export { type CriteriaEntry, type CriteriaGroup, groupCriteria } from "./groups";
export {
  inHouseSchema,
  type Problem,
  type ReadCriteria,
  readCriteria,
  readCriteriaText,
  writeCriteria,
} from "./in-house";
export { type InHouseSet, wholeCriteria } from "./in-house-set";
export { type Indication, type Measured, measuredSize, type Piece, quantityOf } from "./indication";
export { describeSectionRule } from "./judge-sections";
export { describeLimit, type Limit, limitSchema } from "./limit";
export { mergeCriteria } from "./merge";
export { measuredValues, nominalValues } from "./piece-values";
export { describeRange, type Range, rangeSchema, withinRanges } from "./range";
export { type RowsOn, rowsOn } from "./rows-on";
export { api1104 } from "./sets/api-1104";
export { asmeB313, GROOVE_WELDS, type GrooveWeld } from "./sets/asme-b31-3";
export { type AwsOptions, awsD11, LOADINGS, type Loading, STRESSES, type Stress } from "./sets/aws-d1-1";
export { BUILT_IN_CRITERIA, builtInCriteria, DEFAULT_CRITERIA } from "./sets/built-in";
export { EXECUTION_CLASSES, type ExecutionClass, en1090 } from "./sets/en1090-2";
export {
  atLevel,
  ISO_5817_EDITIONS,
  type Iso5817Edition,
  type Iso5817Options,
  iso5817,
  iso5817Rows,
  severalInOneSection,
} from "./sets/iso5817";
export { CHANGES_2023, type EditionChange, PENETRATION_READINGS, type PenetrationReading } from "./sets/iso5817-2023";
export { type LevelRow, QUALITY_LEVELS, type QualityLevel } from "./sets/iso5817-rows/level-row";
export { describeSumRule, mostOn, SHORT_IMPERFECTION, type SumRule, sumRuleSchema } from "./sum-rule";
export {
  LENGTHS,
  QUANTITIES,
  QUANTITY_FACTS,
  type Quantity,
  SYMBOL_FACTS,
  SYMBOLS,
  type SymbolName,
  type SymbolValues,
} from "./symbols";
export { type Load, type Window, worstWindow } from "./windows";
