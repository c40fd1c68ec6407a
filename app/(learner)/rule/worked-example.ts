import type { ImperfectionType } from "@/lib/imperfections";
import { DEFAULT_TOLERANCES, PART_SHARES, RULE } from "@/lib/results";

/** A place with a type on the cap face, mm, as it is on the plate or in a report. */
interface ExamplePlace {
  readonly type: ImperfectionType;
  readonly start: number;
  readonly end: number;
  readonly across: number;
  readonly size: number;
}

interface ExampleLine {
  readonly there: ExamplePlace | null;
  readonly written: ExamplePlace | null;
  readonly marks: number;
  readonly why: string;
}

/** Four indications of the same weight: each is worth a quarter of the section. */
const WORTH = 100 / 4;
const LATE = 10;
const { start } = DEFAULT_TOLERANCES;
const startEarned = (start.full * start.none - LATE) / (start.full * (start.none - 1));
const percent = (share: number) => `${Math.round(share * 100)} %`;

const UNDERCUT: ExamplePlace = { type: "continuous-undercut", start: 30, end: 60, across: 6, size: 0.8 };
const GROOVE: ExamplePlace = { type: "incompletely-filled-groove", start: 90, end: 130, across: 5, size: 1 };
const NOTCHES: ExamplePlace = { type: "intermittent-undercut", start: 160, end: 190, across: -6, size: 0.7 };

/** A cap face with four indications and a report on it, in plate order. */
export const EXAMPLE_LINES: readonly ExampleLine[] = [
  {
    there: UNDERCUT,
    written: { ...UNDERCUT, start: 32, end: 59, size: 0.6 },
    marks: WORTH,
    why: "Everything is within what counts in full.",
  },
  {
    there: GROOVE,
    written: { ...GROOVE, type: "overlap" },
    marks: WORTH * (1 - PART_SHARES.type / 100),
    why: `Found and measured, but the type is wrong: its ${PART_SHARES.type} % are lost.`,
  },
  {
    there: NOTCHES,
    written: { ...NOTCHES, start: NOTCHES.start + LATE },
    marks: WORTH * (1 - (PART_SHARES.start / 100) * (1 - startEarned)),
    why: `The start is ${LATE} mm off: it earns ${percent(startEarned)} of its ${PART_SHARES.start} %.`,
  },
  {
    there: { ...UNDERCUT, start: 220, end: 250 },
    written: null,
    marks: 0,
    why: "Missed: nothing earned, nothing taken away.",
  },
  {
    there: null,
    written: { type: "surface-pore", start: 280, end: 280, across: 0, size: 1 },
    marks: -RULE.price * WORTH,
    why: `A false call: ${percent(RULE.price)} of an average indication.`,
  },
];

/** Marks of the section. */
export const EXAMPLE_MARK = EXAMPLE_LINES.reduce((sum, { marks }) => sum + marks, 0);
