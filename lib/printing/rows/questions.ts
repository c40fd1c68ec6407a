import type { QuestionLine } from "../../results";
import type { Column } from "../csv";
import type { PrintedSheet } from "../printed-sheet";
import { FACES, OF_SECTION, type OfSection, tenths } from "./common";
import { MARKS_OF_LINE, reviewOf, type SaidOfLine, saidOf } from "./reviewed";

interface QuestionRow extends OfSection {
  readonly said: SaidOfLine;
  readonly isAnnulled: boolean;
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
  ...MARKS_OF_LINE,
  { header: "Annulled", of: ({ isAnnulled }) => isAnnulled },
];

export const questionRows = (sheet: PrintedSheet): readonly QuestionRow[] =>
  sheet.sections.flatMap(({ section, questions }, n) =>
    (questions?.lines ?? []).map((line, index) => {
      const review = reviewOf(sheet, n);
      const said = saidOf(review, "questions", index, line);
      const isAnnulled = review.standing.annulled.has(line.question);
      return { sheet, section, number: index + 1, line, said, isAnnulled };
    }),
  );
