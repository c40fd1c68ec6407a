import type { Call, Report } from "../report";
import {
  type AccountLine,
  DEFAULT_PASS_MARK,
  DEFAULT_TOLERANCES,
  isPass,
  type ReportResult,
  RULE_VERSION,
  type SectionResult,
  type SectionTotals,
  shownMark,
  type Tolerances,
} from "../results";
import type { Truth } from "../specimen";
import type { Face } from "../weld";
import { emptyLine, falseCallLine, matchedLine, unmatchedTruthLine } from "./account";
import { matchSection, prepareSection, type Section, WHOLE } from "./section";

/** How one section is marked, from its paper. */
export interface SectionSettings {
  /** Marks needed to pass, at most one decimal. */
  readonly passMark: number;
  readonly tolerances: Tolerances;
}

/** How a report on both faces is marked. */
export interface ReportSettings {
  readonly passMarks: Readonly<Record<Face, number>>;
  readonly tolerances: Tolerances;
}

export const DEFAULT_SETTINGS: ReportSettings = {
  passMarks: { cap: DEFAULT_PASS_MARK, root: DEFAULT_PASS_MARK },
  tolerances: DEFAULT_TOLERANCES,
};

/**
 * Marks one face of a report against the truth; what lies or was called on the other face is left out. The result holds an
 * account whose lines add up to the mark exactly, in thousandths: the worth of the indications is shared out of 100,000
 * by largest remainder, every line is rounded once, and its parts are shared out of the rounded line. Clutter only gives
 * false calls a name: no mark depends on it.
 */
export function markSection(
  section: Face,
  truth: Pick<Truth, "items" | "clutter">,
  calls: readonly Call[],
  { passMark, tolerances }: SectionSettings,
): SectionResult {
  const prepared = prepareSection(section, truth, calls, tolerances);
  const lines = accountLines(prepared, tolerances);
  const raw = lines.reduce((sum, line) => sum + line.earned, 0);
  if (raw < 0) lines.push({ ...emptyLine("floor"), earned: 0 - raw });
  const mark = Math.max(0, raw);
  const shown = shownMark(mark);
  return {
    version: 1,
    ruleVersion: RULE_VERSION,
    section,
    passMark,
    mark,
    shown,
    passed: isPass(shown, passMark),
    totals: totalsOf(prepared, lines),
    lines,
  };
}

/** Marks both faces of a report, each by itself. */
export function markReport(truth: Truth, report: Report, settings: ReportSettings): ReportResult {
  const mark = (face: Face): SectionResult =>
    markSection(face, truth, report.calls, {
      passMark: settings.passMarks[face],
      tolerances: settings.tolerances,
    });
  return { version: 1, sections: { cap: mark("cap"), root: mark("root") } };
}

/** Lines in plate order, then the calls without a place. */
function accountLines(section: Section, tolerances: Tolerances): AccountLine[] {
  const placed: { start: number; line: AccountLine }[] = [];
  const truths = new Set<number>();
  const pieces = new Set<number>();
  for (const block of matchSection(section, tolerances)) {
    placed.push({ start: block.target.start, line: matchedLine(section, block) });
    for (const truth of block.target.truths) truths.add(truth);
    for (const piece of block.pieces) pieces.add(piece);
  }
  section.targets.forEach((target, truth) => {
    if (!truths.has(truth)) placed.push({ start: target.start, line: unmatchedTruthLine(section, truth) });
  });
  section.pieces.forEach((piece, position) => {
    if (!pieces.has(position)) placed.push({ start: piece.start, line: falseCallLine(section, piece) });
  });
  placed.sort((a, b) => a.start - b.start);
  const clean = section.indications === 0 ? [{ ...emptyLine("nothing-to-find"), worth: WHOLE, earned: WHOLE }] : [];
  const unplaced = section.unplaced.map((call) => ({ ...emptyLine("not-counted"), callIds: [call.id] }));
  return [...clean, ...placed.map(({ line }) => line), ...unplaced];
}

function totalsOf(section: Section, lines: readonly AccountLine[]): SectionTotals {
  const count = (kind: AccountLine["kind"]): number => lines.filter((line) => line.kind === kind).length;
  const truthsIn = (kind: AccountLine["kind"]): number =>
    lines.filter((line) => line.kind === kind).reduce((sum, line) => sum + indicationsIn(section, line), 0);
  const parts = lines.flatMap((line) => line.parts);
  return {
    indications: section.indications,
    neutral: section.truths.length - section.indications,
    calls: section.pieces.length,
    notCounted: section.unplaced.length,
    found: count("found"),
    partly: count("partly"),
    split: count("split"),
    merged: truthsIn("merged"),
    missed: count("missed"),
    falseCalls: count("false-call"),
    partsEarned: parts.reduce((sum, part) => sum + part.earned, 0),
    cost: lines.reduce((sum, line) => sum + line.cost, 0),
    back: lines.reduce((sum, line) => sum + line.back, 0),
    floor: lines.filter((line) => line.kind === "floor").reduce((sum, line) => sum + line.earned, 0),
  };
}

function indicationsIn(section: Section, line: AccountLine): number {
  return section.truths.filter((truth) => !truth.neutral && line.truthIds.includes(truth.id)).length;
}
