import type { DimensionLine, StatementLine } from "../../results";
import { ANSWER_NAMES, DIMENSION_FACTS, STATEMENT_FACTS } from "../../weld";
import type { Column } from "../csv";
import type { PrintedSheet } from "../printed-sheet";
import { OF_SECTION, type OfSection, tenths } from "./common";
import { MARKS_OF_LINE, reviewOf, type SaidOfLine, saidOf } from "./reviewed";

interface DimensionRow extends OfSection {
  readonly said: SaidOfLine;
  readonly line: DimensionLine;
}

/** One row for each dimension that was asked for. */
export const DIMENSION_COLUMNS: readonly Column<DimensionRow>[] = [
  ...OF_SECTION,
  { header: "Dimension", of: ({ line }) => DIMENSION_FACTS[line.dimension].name },
  { header: "Station", of: ({ line }) => line.station },
  { header: "Unit", of: ({ line }) => DIMENSION_FACTS[line.dimension].unit },
  { header: "Written", of: ({ line }) => tenths(line.written) },
  { header: "Measured at, mm", of: ({ line }) => tenths(line.writtenAt) },
  { header: "True", of: ({ line }) => tenths(line.actual) },
  { header: "It is so at, mm", of: ({ line }) => tenths(line.actualAt) },
  { header: "Right where it was measured", of: ({ line }) => tenths(line.actualThere) },
  { header: "Off by", of: ({ line }) => tenths(line.error) },
  { header: "Earns in full up to", of: ({ line }) => tenths(line.tolerance) },
  ...MARKS_OF_LINE,
];

export const dimensionRows = (sheet: PrintedSheet): readonly DimensionRow[] =>
  sheet.sections.flatMap(({ section, dimensions }, n) =>
    (dimensions?.lines ?? []).map((line, at) => {
      const said = saidOf(reviewOf(sheet, n), "dimensions", at, line);
      return { sheet, section, line, said };
    }),
  );

interface StatementRow extends OfSection {
  readonly said: SaidOfLine;
  readonly line: StatementLine;
}

/** One row for each statement on a fillet. */
export const STATEMENT_COLUMNS: readonly Column<StatementRow>[] = [
  ...OF_SECTION,
  { header: "Statement", of: ({ line }) => STATEMENT_FACTS[line.statement].name },
  { header: "Written", of: ({ line }) => line.written && ANSWER_NAMES[line.written] },
  { header: "Right", of: ({ line }) => line.right.map((answer) => ANSWER_NAMES[answer]).join(" or ") },
  { header: "What decides, mm", of: ({ line }) => tenths(line.value) },
  { header: "Limit, mm", of: ({ line }) => tenths(line.limit) },
  ...MARKS_OF_LINE,
];

export const statementRows = (sheet: PrintedSheet): readonly StatementRow[] =>
  sheet.sections.flatMap(({ section, dimensions }, n) =>
    (dimensions?.statements ?? []).map((line, at) => {
      const said = saidOf(reviewOf(sheet, n), "statements", at, line);
      return { sheet, section, line, said };
    }),
  );
