import { imperfection } from "../imperfections";
import { type Call, type Report, SENTENCE_NAMES } from "../report";
import type { QuestionLine } from "../results";
import {
  ANSWER_NAMES,
  ASKED_DIMENSIONS,
  type AskedDimension,
  DIMENSION_FACTS,
  type JointKind,
  nameAsked,
  PIECES,
  STATEMENT_FACTS,
  STATEMENTS,
  type SurfaceFace,
  sideLetter,
} from "../weld";
import type { Block, FactsBlock, Printed, TableBlock } from "./block";

/** A report as it was handed in, with what belongs over it. */
export interface ReportToPrint {
  readonly learner: { readonly name: string; readonly signInName: string };
  readonly practiceId: string;
  readonly kind: JointKind;
  /** In words, as the drawing has it. */
  readonly joint: string;
  /** Criteria with their edition, and whether their table lay open; null where nothing was sentenced. */
  readonly criteria: { readonly name: string; readonly edition: string; readonly isOpen: boolean } | null;
  readonly startedAt: Date;
  readonly handedInAt: Date;
  readonly report: Report;
  /** What was asked, with what was chosen; keys are not printed here. */
  readonly questions: readonly Pick<QuestionLine, "stem" | "options" | "written">[];
}

const BLANK = "not written";
const FACE_NAMES: Readonly<Record<SurfaceFace, string>> = { cap: "Cap", root: "Root", fillet: "Weld" };

/** What stands over the marks of a piece. */
export function marksFacts(printed: {
  readonly learner: ReportToPrint["learner"];
  readonly practiceId: string;
  readonly joint: string;
  readonly criteria: { readonly name: string; readonly edition: string } | null;
  readonly handedInAt: Date;
  readonly ruleVersion: string;
}): FactsBlock {
  const { learner, practiceId, joint, criteria, handedInAt, ruleVersion } = printed;
  return {
    kind: "facts",
    facts: [
      ["Learner", `${learner.name} (${learner.signInName})`],
      ["Piece", practiceId],
      ["Joint", joint],
      ["Handed in", handedInAt],
      ...(criteria ? [["Criteria", `${criteria.name} (${criteria.edition})`] as const] : []),
      ["Marking rule", ruleVersion],
    ],
  };
}

/** Everything on it in the order of the report, with lines to sign on; what was left blank says so. */
export function reportPrint(printed: ReportToPrint): readonly Block[] {
  const { learner, practiceId, joint, kind, criteria, startedAt, handedInAt, report, questions } = printed;
  const facts: (readonly [string, Printed])[] = [
    ["Learner", `${learner.name} (${learner.signInName})`],
    ["Piece", practiceId],
    ["Joint", joint],
    ["Started", startedAt],
    ["Handed in", handedInAt],
    [
      "Criteria",
      criteria
        ? `${criteria.name} (${criteria.edition}), ${criteria.isOpen ? "table open" : "table closed"}`
        : "none: nothing was to be sentenced",
    ],
  ];
  if (criteria) facts.push(["Sentence on the piece", sentenceWords(report.pieceSentence)]);
  return [
    { kind: "facts", facts },
    indicationTable(report, kind, criteria !== null),
    dimensionTable(report, kind),
    ...(kind === "fillet" ? [statementTable(report)] : []),
    ...(questions.length > 0 ? [questionTable(questions)] : []),
    { kind: "signatures", of: ["Learner", "Tutor"] },
  ];
}

function indicationTable({ calls }: Report, kind: JointKind, isSentenced: boolean): TableBlock {
  const hasFaces = PIECES[kind].faces.length > 1;
  return {
    kind: "table",
    title: "Indications",
    columns: [
      { name: "No.", isNumber: true },
      ...(hasFaces ? [{ name: "Face" }] : []),
      { name: "What it is" },
      { name: "From, mm", isNumber: true },
      { name: "To, mm", isNumber: true },
      { name: "Across, mm", isNumber: true },
      { name: "Size, mm", isNumber: true },
      ...(isSentenced ? [{ name: "Sentence" }] : []),
    ],
    rows: calls.map((call, index) => [
      String(index + 1),
      ...(hasFaces ? [FACE_NAMES[call.face]] : []),
      call.type ? `${imperfection(call.type).name} (${imperfection(call.type).number})` : BLANK,
      numberWords(call.start),
      endWords(call),
      acrossWords(call),
      sizeWords(call),
      ...(isSentenced ? [sentenceWords(call.sentence)] : []),
    ]),
    empty: "No indications were reported.",
  };
}

function dimensionTable({ measures }: Report, kind: JointKind): TableBlock {
  const measureOf = ({ dimension, station }: AskedDimension) =>
    measures.find((one) => one.dimension === dimension && one.station === station);
  return {
    kind: "table",
    title: "Dimensions",
    columns: [
      { name: "Dimension" },
      { name: "Measured", isNumber: true },
      { name: "Unit" },
      { name: "Measured at, mm", isNumber: true },
    ],
    rows: ASKED_DIMENSIONS[kind].map((asked) => {
      const { taken, unit } = DIMENSION_FACTS[asked.dimension];
      const measure = measureOf(asked);
      const isSomewhere = taken === "largest" || taken === "least";
      return [nameAsked(asked), numberWords(measure?.value), unit, isSomewhere ? numberWords(measure?.at) : ""];
    }),
    empty: "No dimensions were asked for.",
  };
}

function statementTable({ statements }: Report): TableBlock {
  const answerOn = (statement: (typeof STATEMENTS)[number]) =>
    statements.find((stated) => stated.statement === statement)?.answer;
  return {
    kind: "table",
    title: "Statements",
    columns: [{ name: "Statement" }, { name: "Stated" }],
    rows: STATEMENTS.map((statement) => {
      const answer = answerOn(statement);
      return [STATEMENT_FACTS[statement].name, answer ? ANSWER_NAMES[answer] : BLANK];
    }),
    empty: "",
  };
}

function questionTable(questions: ReportToPrint["questions"]): TableBlock {
  return {
    kind: "table",
    title: "Questions",
    columns: [{ name: "No.", isNumber: true }, { name: "Question" }, { name: "Chosen" }],
    rows: questions.map(({ stem, options, written }, index) => [
      String(index + 1),
      stem,
      written === null ? "not answered" : `${"ABCD"[written]}: ${options[written]}`,
    ]),
    empty: "",
  };
}

const numberWords = (value: number | null | undefined): string =>
  value === null || value === undefined ? BLANK : String(value);

const sentenceWords = (sentence: Call["sentence"]): string => (sentence ? SENTENCE_NAMES[sentence] : BLANK);

/** A point has no end of its own. */
const endWords = ({ type, end }: Call): string =>
  end === null && type && imperfection(type).extent === "point" ? "point" : numberWords(end);

function acrossWords({ face, across }: Call): string {
  if (across === null) return BLANK;
  return across === 0 ? "0" : `${Math.abs(across)} ${sideLetter(face, across)}`;
}

/** Nothing where nobody measures a size. */
function sizeWords({ type, size }: Call): string {
  const kind = type && imperfection(type).size;
  if (size !== null) return kind ? `${size} ${kind}` : String(size);
  return type && !kind ? "" : BLANK;
}
