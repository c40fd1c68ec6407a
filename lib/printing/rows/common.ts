import { imperfection } from "../../imperfections";
import type { Call } from "../../report";
import { inTenths, type MarkedSection, marksInHundredths } from "../../results";
import type { SurfaceFace } from "../../weld";
import type { Column } from "../csv";
import type { PrintedSheet } from "../printed-sheet";
import { ATTEMPT_WORDS, type Work } from "../work";

/** What every row begins with: whose piece it is about, and which section of it. */
export interface OfSection {
  readonly sheet: PrintedSheet;
  readonly section: MarkedSection;
}

const SECTIONS: Readonly<Record<MarkedSection, string>> = {
  plate: "butt plate",
  fillet: "fillet weld",
  cap: "cap face",
  root: "root face",
};

export const FACES: Readonly<Record<SurfaceFace, string>> = { cap: "cap face", root: "root face", fillet: "weld face" };

type Sat = Extract<Work, { readonly kind: "sitting" }>;

/** A cell that only a section of a sitting has. */
const ofSitting =
  (cell: (work: Sat) => string | number | null) =>
  ({ sheet: { work } }: OfSection) =>
    work.kind === "sitting" ? cell(work) : null;

const attemptWords = (attempt: Sat["attempt"]) => attempt && ATTEMPT_WORDS[attempt];

/** Who, which piece, when, and what for; the same in every file, so that files can be joined by the piece and the section. */
export const OF_SECTION: readonly Column<OfSection>[] = [
  { header: "Learner", of: ({ sheet }) => sheet.learner.name },
  { header: "Sign-in name", of: ({ sheet }) => sheet.learner.signInName },
  { header: "Piece", of: ({ sheet }) => sheet.practiceId },
  { header: "Section", of: ({ section }) => SECTIONS[section] },
  { header: "Handed in, UTC", of: ({ sheet }) => sheet.handedInAt },
  { header: "Work", of: ({ sheet }) => sheet.work.kind },
  { header: "Paper", of: ofSitting(({ paper }) => paper) },
  { header: "Round", of: ofSitting(({ round, isVoid }) => (isVoid ? null : round)) },
  { header: "Attempt", of: ofSitting(({ attempt, isVoid }) => attemptWords(isVoid ? "void" : attempt)) },
  { header: "Counts", of: ({ sheet: { work } }) => work.kind === "practice" || !work.isVoid },
];

/** A number with the decimals that the screen shows, and still a number. */
export const tenths = (value: number | null): number | null => (value === null ? null : Number(inTenths(value)));

export const marks = (thousandths: number): number => Number(marksInHundredths(thousandths));

/** What a line could bring and brought: as shown, and exactly, since only exact marks add up to the sum. */
export const EARNED: readonly Column<{ readonly line: { readonly worth: number; readonly earned: number } }>[] = [
  { header: "Worth, marks", of: ({ line }) => marks(line.worth) },
  { header: "Earned, marks", of: ({ line }) => marks(line.earned) },
  { header: "Worth, thousandths of a mark", of: ({ line }) => line.worth },
  { header: "Earned, thousandths of a mark", of: ({ line }) => line.earned },
];

/** Name and number of ISO 6520-1. */
export function typeWords(type: Call["type"]): string | null {
  if (!type) return null;
  const { name, number } = imperfection(type);
  return `${name} (${number})`;
}

/** Numbers that the rows of the report have, counted from 1: "2", or "2 and 3". */
export function callNumbers(sheet: PrintedSheet, ids: readonly string[]): string | number | null {
  const numbers = sheet.calls.flatMap(({ id }, index) => (ids.includes(id) ? [index + 1] : []));
  return numbers.length > 1 ? numbers.join(" and ") : (numbers[0] ?? null);
}
