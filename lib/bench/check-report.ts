import { imperfection, likeness } from "../imperfections";
import type { Mm } from "../math";
import type { Call, Report } from "../report";
import { ASKED_DIMENSIONS, type AskedDimension, type JointKind, STATEMENTS, type Statement } from "../weld";

export type BlankField = "type" | "start" | "end" | "across" | "size";

/** Fields of a row that are still empty, in reading order. A point needs no end; where nothing is measured, no size. */
export function blanksOf(call: Call): readonly BlankField[] {
  const kind = call.type === null ? null : imperfection(call.type);
  const blanks: BlankField[] = [];
  if (!kind) blanks.push("type");
  if (call.start === null) blanks.push("start");
  if (call.end === null && kind?.extent === "line") blanks.push("end");
  if (call.across === null) blanks.push("across");
  if (call.size === null && kind?.size) blanks.push("size");
  return blanks;
}

/** How close two rows must lie to be asked about, mm along and across. */
const CLOSE_ALONG: Mm = 2;
const CLOSE_ACROSS: Mm = 3;

/** Pairs of rows that may be one indication written twice: the same face, the same place, kinds that are alike or blank. */
export function nearlyAlike(report: Report): readonly (readonly [Call, Call])[] {
  const { calls } = report;
  return calls.flatMap((one, i) => calls.slice(i + 1).flatMap((other) => (isAlike(one, other) ? [[one, other]] : [])));
}

function isAlike(one: Call, other: Call): boolean {
  if (one.face !== other.face || one.start === null || other.start === null) return false;
  if (one.type && other.type && likeness(one.type, other.type) === 0) return false;
  const gap = Math.max(one.start, other.start) - Math.min(one.end ?? one.start, other.end ?? other.start);
  const aside = one.across === null || other.across === null ? 0 : Math.abs(one.across - other.across);
  return gap <= CLOSE_ALONG && aside <= CLOSE_ACROSS;
}

/** What a learner is shown before handing in. It says nothing about what is right. */
export interface HandInCheck {
  readonly blanks: readonly { readonly call: Call; readonly number: number; readonly fields: readonly BlankField[] }[];
  readonly alike: readonly (readonly [number, number])[];
  /** Dimensions without a value. */
  readonly unmeasured: readonly AskedDimension[];
  /** Statements without an answer. */
  readonly unstated: readonly Statement[];
  /** Rows without a sentence, and whether the piece has none. */
  readonly unsentenced: readonly number[];
  readonly isPieceUnsentenced: boolean;
}

/** Blank fields and look-alike pairs of a report on a piece of that kind; rows are numbered from 1 in the order they were written. */
export function checkForHandIn(report: Report, kind: JointKind): HandInCheck {
  const numberOf = (call: Call) => report.calls.indexOf(call) + 1;
  return {
    blanks: report.calls
      .map((call) => ({ call, number: numberOf(call), fields: blanksOf(call) }))
      .filter(({ fields }) => fields.length > 0),
    alike: nearlyAlike(report).map(([one, other]) => [numberOf(one), numberOf(other)]),
    unmeasured: ASKED_DIMENSIONS[kind].filter(
      ({ dimension, station }) =>
        !report.measures.some(
          (measure) => measure.dimension === dimension && measure.station === station && measure.value !== null,
        ),
    ),
    unstated:
      kind === "fillet"
        ? STATEMENTS.filter((one) => !report.statements.some(({ statement }) => statement === one))
        : [],
    unsentenced: report.calls.filter(({ sentence }) => sentence === null).map(numberOf),
    isPieceUnsentenced: report.pieceSentence === null,
  };
}
