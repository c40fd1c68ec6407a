import { CLUTTER_WORDS, type Clutter, imperfection } from "../imperfections";
import { inTenths, type StatementLine } from "../results";
import {
  ANSWER_NAMES,
  type AskedDimension,
  DIMENSION_FACTS,
  nameAsked,
  STATEMENT_FACTS,
  type SurfaceFace,
  sideLetter,
} from "../weld";
import type { TableBlock } from "./block";
import type { PrintedTruth } from "./printed-sheet";

/** What is on a piece, as its sheet with answers tells it. Lengths in mm. */
export interface PieceAnswers {
  readonly truths: readonly (PrintedTruth & { readonly neutral: boolean })[];
  readonly clutter: readonly { readonly id: string; readonly face: SurfaceFace; readonly kind: Clutter }[];
  readonly dimensions: readonly (AskedDimension & { readonly value: number })[];
  readonly statements: readonly Pick<StatementLine, "statement" | "right">[];
}

const FACES: Readonly<Record<SurfaceFace, string>> = { cap: "Cap", root: "Root", fillet: "Weld" };

/** Everything there on the piece: imperfections under the numbers of the pictures, dimensions, statements, harmless traces. */
export function answersPrint({ truths, clutter, dimensions, statements }: PieceAnswers): readonly TableBlock[] {
  return [
    {
      kind: "table",
      title: "What is there",
      columns: [
        { name: "No.", isNumber: true },
        { name: "Face" },
        { name: "What it is" },
        { name: "From, mm", isNumber: true },
        { name: "To, mm", isNumber: true },
        { name: "Across, mm", isNumber: true },
        { name: "Size, mm", isNumber: true },
        { name: "To be recorded" },
      ],
      rows: truths.map(({ face, type, start, end, across, size, neutral }, index) => {
        const row = imperfection(type);
        return [
          String(index + 1),
          FACES[face],
          `${row.name} (${row.number})`,
          inTenths(start),
          row.extent === "point" ? "point" : inTenths(end),
          `${inTenths(Math.abs(across))} ${sideLetter(face, across)}`,
          size === null ? "" : `${inTenths(size)} ${row.size ?? ""}`.trim(),
          neutral ? "no: too small or harmless" : "yes",
        ];
      }),
      empty: "Nothing is to be recorded on this piece.",
    },
    {
      kind: "table",
      title: "Dimensions",
      columns: [{ name: "Dimension" }, { name: "It is", isNumber: true }, { name: "Unit" }],
      rows: dimensions.map((one) => [nameAsked(one), inTenths(one.value), DIMENSION_FACTS[one.dimension].unit]),
      empty: "No dimensions were measured.",
    },
    ...(statements.length > 0 ? [statementTable(statements)] : []),
    ...(clutter.length > 0 ? [clutterTable(clutter)] : []),
  ];
}

const statementTable = (statements: PieceAnswers["statements"]): TableBlock => ({
  kind: "table",
  title: "Statements",
  columns: [{ name: "Statement" }, { name: "Right" }],
  rows: statements.map(({ statement, right }) => [
    STATEMENT_FACTS[statement].name,
    right.map((answer) => ANSWER_NAMES[answer]).join(" or "),
  ]),
  empty: "",
});

const clutterTable = (clutter: PieceAnswers["clutter"]): TableBlock => ({
  kind: "table",
  title: "Harmless traces, not to be recorded",
  columns: [{ name: "Face" }, { name: "What it is" }],
  rows: clutter.map(({ face, kind }) => [FACES[face], CLUTTER_WORDS[kind].there]),
  empty: "",
});
