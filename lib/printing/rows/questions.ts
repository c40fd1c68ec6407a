import type { QuestionLine } from "../../results";
import type { Column } from "../csv";
import type { PrintedSheet } from "../printed-sheet";
import { EARNED, FACES, OF_SECTION, type OfSection, tenths } from "./common";

interface QuestionRow extends OfSection {
  /** Counted from 1 within the section. */
  readonly number: number;
  readonly line: QuestionLine;
}

/** By which letter an option is called. */
const LETTERS = ["A", "B", "C", "D"] as const;

/** One row for each question that was asked. */
export const QUESTION_COLUMNS: readonly Column<QuestionRow>[] = [
  ...OF_SECTION,
  { header: "Question", of: ({ number }) => number },
  { header: "Asked", of: ({ line }) => line.stem },
  ...LETTERS.map((letter, index) => ({
    header: `Option ${letter}`,
    of: ({ line }: QuestionRow) => line.options[index],
  })),
  { header: "Chosen", of: ({ line }) => (line.written === null ? null : LETTERS[line.written]) },
  { header: "Right", of: ({ line }) => LETTERS[line.key] },
  { header: "Why", of: ({ line }) => line.explanation },
  { header: "Face", of: ({ line }) => line.place && FACES[line.place.face] },
  { header: "From, mm", of: ({ line }) => tenths(line.place?.start ?? null) },
  { header: "To, mm", of: ({ line }) => tenths(line.place?.end ?? null) },
  ...EARNED,
];

export const questionRows = (sheet: PrintedSheet): readonly QuestionRow[] =>
  sheet.sections.flatMap(({ section, questions }) =>
    (questions?.lines ?? []).map((line, index) => ({ sheet, section, number: index + 1, line })),
  );
