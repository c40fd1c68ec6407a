import { SENTENCE_NAMES } from "../../report";
import type { SentenceLine, SentencesResult } from "../../results";
import type { Column } from "../csv";
import type { PrintedSheet } from "../printed-sheet";
import { callNumbers, OF_SECTION, type OfSection, tenths, typeWords } from "./common";
import { MARKS_OF_LINE, reviewOf, type SaidOfLine, saidOf } from "./reviewed";

interface SentenceRow extends OfSection {
  readonly said: SaidOfLine;
  readonly line: SentenceLine;
  readonly isPiece: boolean;
  readonly criteria: SentencesResult["criteria"];
}

const truthOf = ({ sheet, line }: SentenceRow) => sheet.truths.find(({ id }) => id === line.truthId);

/** One row for each imperfection that was to be sentenced, then one for the piece. */
export const SENTENCE_COLUMNS: readonly Column<SentenceRow>[] = [
  ...OF_SECTION,
  { header: "Criteria", of: ({ criteria }) => `${criteria.name} (${criteria.edition})` },
  { header: "What is sentenced", of: ({ isPiece }) => (isPiece ? "the piece" : "an imperfection") },
  { header: "What it is, or what decides", of: (row) => typeWords(truthOf(row)?.type ?? null) },
  { header: "From, mm", of: (row) => tenths(truthOf(row)?.start ?? null) },
  { header: "To, mm", of: (row) => tenths(truthOf(row)?.end ?? null) },
  { header: "No. in the report", of: ({ sheet, line }) => callNumbers(sheet, line.callIds) },
  { header: "Written", of: ({ line }) => line.written && SENTENCE_NAMES[line.written].toLowerCase() },
  { header: "Right", of: ({ line }) => line.right.map((one) => SENTENCE_NAMES[one].toLowerCase()).join(" or ") },
  {
    header: "What decides",
    of: ({ line }) => (line.decidedBy === "written" ? "what was written" : "what is there"),
  },
  { header: "From the report", of: ({ line }) => line.fromWritten?.text ?? null },
  { header: "From what is there", of: ({ line }) => line.fromTruth.text },
  ...MARKS_OF_LINE,
];

export const sentenceRows = (sheet: PrintedSheet): readonly SentenceRow[] =>
  sheet.sections.flatMap(({ section, sentences }, n) => {
    if (!sentences) return [];
    const { criteria, lines, piece } = sentences;
    return [...lines, piece].map((line, at) => {
      const said = saidOf(reviewOf(sheet, n), "sentences", at, line);
      return { sheet, section, criteria, line, said, isPiece: at === lines.length };
    });
  });
