import type { Report } from "../report";
import {
  DEFAULT_DIMENSION_TOLERANCES,
  DEFAULT_PAPER,
  DEFAULT_TOLERANCES,
  type DimensionTolerances,
  isPass,
  type MarkedSection,
  type PartWeights,
  RULE_VERSION,
  SECTION_PARTS,
  type Section,
  type SectionResult,
  shownMark,
  type Tolerances,
} from "../results";
import type { Truth } from "../specimen";
import { PIECES, type SurfaceFace } from "../weld";
import { apportion } from "./apportion";
import { markDimensions } from "./dimensions";
import { markIndications } from "./indications";
import { WHOLE } from "./section";

/** How one section is marked, from its paper. */
export interface SectionSettings {
  /** Marks needed to pass, at most one decimal. */
  readonly passMark: number;
  readonly weights: PartWeights;
  readonly tolerances: Tolerances;
  readonly dimensionTolerances: DimensionTolerances;
}

const defaultsOf = (section: Section): SectionSettings => ({
  passMark: DEFAULT_PAPER[section].passMark,
  weights: DEFAULT_PAPER[section].weights,
  tolerances: DEFAULT_TOLERANCES,
  dimensionTolerances: DEFAULT_DIMENSION_TOLERANCES,
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
 * Marks what a report says of the faces of one section against the truth. The parts share out the section's 100 marks by
 * their weights; a part for which the specimen has nothing leaves its weight to the others. All lines of all parts add up to
 * the mark exactly, in thousandths.
 */
export function markSection(
  section: MarkedSection,
  truth: Pick<Truth, "items" | "clutter" | "dimensions" | "statements">,
  report: Pick<Report, "calls" | "measures" | "statements">,
  settings: SectionSettings,
): SectionResult {
  const { passMark, weights, tolerances, dimensionTolerances } = settings;
  const hasDimensions = truth.dimensions.length + truth.statements.length > 0;
  const [ofIndications, ofDimensions] = apportion(
    WHOLE,
    SECTION_PARTS.map((part) => (part === "dimensions" && !hasDimensions ? 0 : weights[part])),
  );
  const indications = markIndications(FACES_OF[section], truth, report.calls, tolerances, ofIndications);
  const dimensions = hasDimensions ? markDimensions(truth, report, dimensionTolerances, ofDimensions) : null;
  const mark = indications.earned + (dimensions?.earned ?? 0);
  const shown = shownMark(mark);
  return {
    version: 2,
    ruleVersion: RULE_VERSION,
    section,
    passMark,
    mark,
    shown,
    passed: isPass(shown, passMark),
    indications,
    dimensions,
  };
}
