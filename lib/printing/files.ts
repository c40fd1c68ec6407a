import { type Cell, type Column, csvText } from "./csv";
import type { PrintedSheet } from "./printed-sheet";
import { DIMENSION_COLUMNS, dimensionRows, STATEMENT_COLUMNS, statementRows } from "./rows/dimensions";
import { INDICATION_COLUMNS, indicationRows } from "./rows/indications";
import { QUESTION_COLUMNS, questionRows } from "./rows/questions";
import { SECTION_COLUMNS, sectionRows } from "./rows/sections";
import { SENTENCE_COLUMNS, sentenceRows } from "./rows/sentences";

/** What a CSV file can have one row for each of. */
export const FILE_KINDS = ["sections", "indications", "dimensions", "statements", "sentences", "questions"] as const;
export type FileKind = (typeof FILE_KINDS)[number];

/** As people choose them: one row for each ... */
export const FILE_NAMES: Readonly<Record<FileKind, string>> = {
  sections: "One row a section",
  indications: "One row an indication",
  dimensions: "One row a dimension",
  statements: "One row a statement",
  sentences: "One row a sentence",
  questions: "One row a question",
};

/** Gathers the rows of one kind from one piece after another, so that no more than one need be held at a time. */
export interface FileWriter {
  add(sheet: PrintedSheet): void;
  /** The whole file, with its header even where there are no rows. */
  text(): string;
}

function writer<Row>(columns: readonly Column<Row>[], rowsOf: (sheet: PrintedSheet) => readonly Row[]): FileWriter {
  const cells: (readonly Cell[])[] = [];
  return {
    add: (sheet) => {
      for (const row of rowsOf(sheet)) cells.push(columns.map(({ of }) => of(row)));
    },
    text: () =>
      csvText(
        columns.map(({ header }) => header),
        cells,
      ),
  };
}

const WRITERS: Readonly<Record<FileKind, () => FileWriter>> = {
  sections: () => writer(SECTION_COLUMNS, sectionRows),
  indications: () => writer(INDICATION_COLUMNS, indicationRows),
  dimensions: () => writer(DIMENSION_COLUMNS, dimensionRows),
  statements: () => writer(STATEMENT_COLUMNS, statementRows),
  sentences: () => writer(SENTENCE_COLUMNS, sentenceRows),
  questions: () => writer(QUESTION_COLUMNS, questionRows),
};

/** A file of that kind, with no rows yet. */
export const openFile = (kind: FileKind): FileWriter => WRITERS[kind]();
