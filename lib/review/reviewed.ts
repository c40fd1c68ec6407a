import { isPass, SECTION_PARTS, type SectionPart, type SectionResult, shownMark } from "../results";
import type { ReviewAct } from "./act";
import { type LineId, type LineOfResult, linesOf } from "./lines";
import { type StandingActs, standingActs } from "./standing-acts";
import { withoutAnnulled } from "./without-annulled";

/** A line beside what was computed of it. Thousandths of a mark. */
export interface ReviewedLine extends LineOfResult {
  readonly reviewed: { readonly worth: number; readonly earned: number };
  /** Of a question that was taken out: its share is with the others, or it keeps what it earned. */
  readonly annulled: "shared-out" | "kept" | null;
}

/** A mark as computed and as tutors' acts leave it. */
export interface ReviewedSection {
  /** As it was marked at hand-in. */
  readonly first: SectionResult;
  /** The one that the lines are of: the first, or the one marked again if that counts. */
  readonly base: SectionResult;
  /** The act that marked again; null where the first counts. */
  readonly baseId: number | null;
  readonly standing: StandingActs;
  /** Thousandths, 0 to 100,000: what the lines add up to, as reviewed. */
  readonly mark: number;
  readonly shown: number;
  readonly passed: boolean;
  /** What each part that was asked could bring and brings, as reviewed. */
  readonly parts: Partial<Readonly<Record<SectionPart, { readonly worth: number; readonly earned: number }>>>;
  readonly lines: readonly ReviewedLine[];
  /** What lifts the indications to 0, as reviewed, where the account had no line for it. */
  readonly floor: number;
}

/**
 * What tutors' acts make of a mark; the computed one stays beside it. Lines and floor add up to the mark exactly. Without
 * acts that stand it is the computed mark.
 */
export function reviewed(first: SectionResult, acts: readonly ReviewAct[]): ReviewedSection {
  const standing = standingActs(acts);
  const { remark, overrulings, annulled } = standing;
  const base = remark?.what.counts ? remark.what.result : first;
  const said = linesOf(base).map((line) => ({ ...line, said: overrulings.get(line.id)?.what.marks ?? line.earned }));
  const floorAt = base.indications.lines.findIndex(({ kind }) => kind === "floor");
  const isFloor = ({ list, id }: { readonly list: string; readonly id: LineId }) =>
    list === "indications" && id === `indications ${floorAt}`;
  const ofIndications = said.filter((line) => line.part === "indications" && !isFloor(line));
  const lift = Math.max(0, -ofIndications.reduce((sum, line) => sum + line.said, 0));
  const questions = withoutAnnulled(
    said.filter(({ part }) => part === "questions").map((line) => ({ ...line, isAnnulled: isAnnulled(line) })),
    base.questions?.worth ?? 0,
  );
  function isAnnulled({ question }: LineOfResult): boolean {
    return question !== null && annulled.has(question);
  }
  const lines = said.map(({ said: earned, ...line }): ReviewedLine => {
    const asked = questions.get(line.id);
    if (asked) return { ...line, ...asked };
    return { ...line, reviewed: { worth: line.worth, earned: isFloor(line) ? lift : earned }, annulled: null };
  });
  const floor = floorAt === -1 ? lift : 0;
  const earnedIn = (part: SectionPart) =>
    lines.reduce((sum, line) => sum + (line.part === part ? line.reviewed.earned : 0), 0) +
    (part === "indications" ? floor : 0);
  const parts = Object.fromEntries(
    SECTION_PARTS.flatMap((part) => {
      const computed = base[part];
      return computed ? [[part, { worth: computed.worth, earned: earnedIn(part) }]] : [];
    }),
  );
  const mark = SECTION_PARTS.reduce((sum, part) => sum + earnedIn(part), 0);
  const shown = shownMark(mark);
  return {
    first,
    base,
    baseId: remark?.what.counts ? remark.id : null,
    standing,
    mark,
    shown,
    passed: isPass(shown, base.passMark),
    parts,
    lines,
    floor,
  };
}
