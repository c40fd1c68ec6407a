import type { Criteria } from "../criteria";
import type { Report } from "../report";
import {
  DEFAULT_DIMENSION_TOLERANCES,
  DEFAULT_PAPER,
  DEFAULT_TOLERANCES,
  type DimensionTolerances,
  earnedTogether,
  isPass,
  type MarkedSection,
  type PartWeights,
  RULE_VERSION,
  SECTION_PARTS,
  type Section,
  type SectionPart,
  type SectionResult,
  SIZE_UNCERTAINTY,
  shownMark,
  type Tolerances,
} from "../results";
import type { Truth } from "../specimen";
import { PIECES, type SurfaceFace } from "../weld";
import { apportion } from "./apportion";
import { markDimensions } from "./dimensions";
import { markIndications } from "./indications";
import { type MarkedQuestion, markQuestions } from "./questions";
import { WHOLE } from "./section";
import { markSentences } from "./sentences";

/** How one section is marked, from its paper. */
export interface SectionSettings {
  /** Marks needed to pass, at most one decimal. */
  readonly passMark: number;
  readonly weights: PartWeights;
  readonly tolerances: Tolerances;
  readonly dimensionTolerances: DimensionTolerances;
  /** How far a size may be misread by careful hands, mm: so near its limit both sentences are right. */
  readonly sizeUncertainty: number;
  /** By which indications and piece are sentenced; null where nothing is. */
  readonly criteria: Criteria | null;
}

const defaultsOf = (section: Section): SectionSettings => ({
  passMark: DEFAULT_PAPER[section].passMark,
  weights: DEFAULT_PAPER[section].weights,
  tolerances: DEFAULT_TOLERANCES,
  dimensionTolerances: DEFAULT_DIMENSION_TOLERANCES,
  sizeUncertainty: SIZE_UNCERTAINTY,
  criteria: null,
});

export const DEFAULT_SETTINGS: Readonly<Record<Section, SectionSettings>> = {
  plate: defaultsOf("plate"),
  fillet: defaultsOf("fillet"),
};

const FACES_OF: Readonly<Record<MarkedSection, readonly SurfaceFace[]>> = {
  plate: PIECES.butt.faces,
  fillet: PIECES.fillet.faces,
  cap: ["cap"],
  root: ["root"],
};

/**
 * Marks what a report says of the faces of one section against the truth, and its answers to the questions that were put, none
 * unless told. The parts share out the section's 100 marks by
 * their weights; a part for which there is nothing to do leaves its weight to the others. All lines of all parts add up to
 * the mark exactly, in thousandths.
 */
export function markSection(
  section: MarkedSection,
  truth: Pick<Truth, "items" | "clutter" | "dimensions" | "statements" | "joint">,
  report: Pick<Report, "calls" | "measures" | "statements" | "pieceSentence" | "answers">,
  settings: SectionSettings,
  questions: readonly MarkedQuestion[] = [],
): SectionResult {
  const { passMark, weights, tolerances, dimensionTolerances, sizeUncertainty, criteria } = settings;
  const faces = FACES_OF[section];
  const isAsked: Readonly<Record<SectionPart, boolean>> = {
    indications: true,
    dimensions: truth.dimensions.length + truth.statements.length > 0,
    sentences: criteria !== null,
    questions: questions.length > 0,
  };
  const [ofIndications, ofDimensions, ofSentences, ofQuestions] = apportion(
    WHOLE,
    SECTION_PARTS.map((part) => (isAsked[part] ? weights[part] : 0)),
  );
  const indications = markIndications(faces, truth, report.calls, tolerances, ofIndications);
  const dimensions = isAsked.dimensions ? markDimensions(truth, report, dimensionTolerances, ofDimensions) : null;
  const sentences =
    criteria && markSentences({ faces, truth, report, criteria, sizeUncertainty }, indications.lines, ofSentences);
  const answered = isAsked.questions ? markQuestions(questions, report.answers, ofQuestions) : null;
  const parts = { indications, dimensions, sentences, questions: answered };
  const mark = earnedTogether(parts);
  const shown = shownMark(mark);
  return {
    version: 3,
    ruleVersion: RULE_VERSION,
    section,
    passMark,
    mark,
    shown,
    passed: isPass(shown, passMark),
    ...parts,
  };
}
