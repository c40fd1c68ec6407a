import { type LineId, type LineList, lineId, type ReviewedSection } from "../../review";
import type { Column } from "../csv";
import type { PrintedSheet } from "../printed-sheet";
import { EARNED, marks } from "./common";

/** What tutors said to a line, beside what was computed of it. */
export interface SaidOfLine {
  /** Thousandths of a mark, as it counts. */
  readonly worth: number;
  readonly earned: number;
  /** Null where nobody said anything of the line itself. */
  readonly by: string | null;
  readonly at: Date | null;
  readonly reason: string | null;
}

type Line = { readonly worth: number; readonly earned: number };

/** A line as it counts; `at` is its place in its list. */
export function saidOf(review: ReviewedSection, list: LineList, at: number, line: Line): SaidOfLine {
  const found = review.lines.find(({ id }) => id === lineId(list, at));
  const act = found ? actOn(review, found) : null;
  const { worth, earned } = found?.reviewed ?? line;
  return { worth, earned, by: act?.by.name ?? null, at: act?.at ?? null, reason: act?.reason ?? null };
}

function actOn({ standing }: ReviewedSection, line: { readonly id: LineId; readonly question: string | null }) {
  const annulled = line.question === null ? undefined : standing.annulled.get(line.question);
  return annulled ?? standing.overrulings.get(line.id) ?? null;
}

/** What tutors made of the mark of a section of a sheet. */
export const reviewOf = ({ reviews }: PrintedSheet, at: number): ReviewedSection => reviews[at];

/** What a line could bring and brought, as computed and as it counts. */
export const MARKS_OF_LINE: readonly Column<{ readonly line: Line; readonly said: SaidOfLine }>[] = [
  ...EARNED,
  { header: "Reviewed worth, marks", of: ({ said }) => marks(said.worth) },
  { header: "Reviewed, marks", of: ({ said }) => marks(said.earned) },
  { header: "Reviewed, thousandths of a mark", of: ({ said }) => said.earned },
  { header: "Changed by", of: ({ said }) => said.by },
  { header: "Changed, UTC", of: ({ said }) => said.at },
  { header: "Why it was changed", of: ({ said }) => said.reason },
];
