import { z } from "zod";
import type { AccountLine, SectionPart, SectionResult } from "../results";

/** Which lists of lines a result has. The sentence on the piece is the last of its list. */
export const LINE_LISTS = ["indications", "dimensions", "statements", "sentences", "questions"] as const;
export type LineList = (typeof LINE_LISTS)[number];

/** The place of a line in its result, which is a stored value and never changes its order: "indications 0". */
export type LineId = string;
export const lineIdSchema = z
  .string()
  .regex(/^(indications|dimensions|statements|sentences|questions) (0|[1-9][0-9]{0,3})$/, {
    error: "line: a line of the mark sheet, for example indications 0",
  });
export const lineId = (list: LineList, at: number): LineId => `${list} ${at}`;

/** A line of a result as an overruling sees it. Thousandths of a mark. */
export interface LineOfResult {
  readonly id: LineId;
  readonly list: LineList;
  readonly part: SectionPart;
  readonly worth: number;
  readonly earned: number;
  /** From where to where it can be overruled; null where nothing was judged. */
  readonly range: { readonly least: number; readonly most: number } | null;
  /** The question that it is about; null on every other line. */
  readonly question: string | null;
}

/** All lines of a result in the order of the mark sheet; what they earned adds up to the mark. */
export function linesOf({ indications, dimensions, sentences, questions }: SectionResult): readonly LineOfResult[] {
  const judged = (list: LineList, part: SectionPart, lines: readonly { worth: number; earned: number }[]) =>
    lines.map(({ worth, earned }, at): LineOfResult => {
      const range = worth > 0 ? { least: 0, most: worth } : null;
      return { id: lineId(list, at), list, part, worth, earned, range, question: null };
    });
  return [
    ...indications.lines.map((line, at): LineOfResult => {
      const { worth, earned } = line;
      const id = lineId("indications", at);
      return { id, list: "indications", part: "indications", worth, earned, range: rangeOf(line), question: null };
    }),
    ...judged("dimensions", "dimensions", dimensions?.lines ?? []),
    ...judged("statements", "dimensions", dimensions?.statements ?? []),
    ...judged("sentences", "sentences", sentences ? [...sentences.lines, sentences.piece] : []),
    ...judged("questions", "questions", questions?.lines ?? []).map((line, at) => ({
      ...line,
      question: questions?.lines[at].question ?? null,
    })),
  ];
}

/** An indication can be given up to its worth; of a call that is worth nothing only its price can be taken back. */
function rangeOf({ kind, worth, earned }: AccountLine): LineOfResult["range"] {
  if (kind === "floor" || kind === "nothing-to-find") return null;
  if (worth > 0) return { least: 0, most: worth };
  return earned < 0 ? { least: 0, most: 0 } : null;
}
