import { SENTENCE_NAMES, worstSentence } from "../../report";
import type { AccountLine, LineKind, Part } from "../../results";
import type { Column } from "../csv";
import type { PrintedSheet } from "../printed-sheet";
import { callNumbers, FACES, OF_SECTION, type OfSection, tenths, typeWords } from "./common";
import { MARKS_OF_LINE, reviewOf, type SaidOfLine, saidOf } from "./reviewed";

interface IndicationRow extends OfSection {
  /** Counted from 1 within the section. */
  readonly number: number;
  readonly line: AccountLine;
  readonly said: SaidOfLine;
}

const KINDS: Readonly<Record<LineKind, string>> = {
  found: "found",
  partly: "partly right",
  missed: "missed",
  split: "found in pieces",
  merged: "several in one",
  "neutral-called": "not recorded, called",
  "neutral-left": "not recorded",
  "false-call": "nothing there",
  "not-counted": "not counted",
  "nothing-to-find": "nothing to find",
  floor: "no less than 0",
};

const truthsOf = ({ sheet, line }: IndicationRow) => sheet.truths.filter(({ id }) => line.truthIds.includes(id));
const callsOf = ({ sheet, line }: IndicationRow) => sheet.calls.filter(({ id }) => line.callIds.includes(id));
const partOf = ({ line }: IndicationRow, part: Part) => line.parts.find((one) => one.part === part);

/** Numbers of a part as they were marked; where nothing was marked, those of the only call or truth of the line. */
function numberOf(row: IndicationRow, part: "start" | "end" | "across" | "size", side: "written" | "actual") {
  const marked = partOf(row, part)?.[side];
  if (typeof marked === "number") return tenths(marked);
  const of = side === "written" ? callsOf(row) : truthsOf(row);
  return of.length === 1 ? tenths(of[0][part]) : null;
}

const measured = (part: "start" | "end" | "across" | "size", name: string): readonly Column<IndicationRow>[] => [
  { header: `${name}, written, mm`, of: (row) => numberOf(row, part, "written") },
  { header: `${name}, true, mm`, of: (row) => numberOf(row, part, "actual") },
  { header: `${name}, off by, mm`, of: (row) => tenths(partOf(row, part)?.error ?? null) },
];

const together = (words: readonly (string | null)[]): string | null => {
  const known = [...new Set(words.filter((word) => word !== null))];
  return known.length > 0 ? known.join("; ") : null;
};

/** One row for each line of the account: an indication, what was called of it, and what that earned. */
export const INDICATION_COLUMNS: readonly Column<IndicationRow>[] = [
  ...OF_SECTION,
  { header: "Line", of: ({ number }) => number },
  { header: "What became of it", of: ({ line }) => KINDS[line.kind] },
  {
    header: "Face",
    of: (row) => together([...truthsOf(row), ...callsOf(row)].map(({ face }) => FACES[face])),
  },
  { header: "No. in the report", of: ({ sheet, line }) => callNumbers(sheet, line.callIds) },
  { header: "What it is, written", of: (row) => together(callsOf(row).map(({ type }) => typeWords(type))) },
  { header: "What it is, true", of: (row) => together(truthsOf(row).map(({ type }) => typeWords(type))) },
  ...measured("start", "From"),
  ...measured("end", "To"),
  ...measured("across", "Across"),
  ...measured("size", "Size"),
  {
    header: "Sentence written",
    of: (row) => {
      const worst = worstSentence(callsOf(row).map(({ sentence }) => sentence));
      return worst && SENTENCE_NAMES[worst].toLowerCase();
    },
  },
  ...MARKS_OF_LINE,
];

export const indicationRows = (sheet: PrintedSheet): readonly IndicationRow[] =>
  sheet.sections.flatMap(({ section, indications }, n) => {
    const review = reviewOf(sheet, n);
    const rows = indications.lines.map((line, index) => {
      const said = saidOf(review, "indications", index, line);
      return { sheet, section, number: index + 1, line, said };
    });
    const lift = review.floor > 0 ? liftTo0(review.floor) : null;
    return lift ? [...rows, { sheet, section, number: rows.length + 1, ...lift }] : rows;
  });

/** What was overruled took the indications below 0 where the account had no line for it. */
const liftTo0 = (floor: number): Pick<IndicationRow, "line" | "said"> => ({
  line: {
    kind: "floor",
    truthIds: [],
    callIds: [],
    worth: 0,
    earned: 0,
    place: null,
    kept: 1,
    parts: [],
    cost: 0,
    back: 0,
    clutter: null,
  },
  said: { worth: 0, earned: floor, by: null, at: null, reason: null },
});
