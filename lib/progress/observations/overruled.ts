import { type LineList, lineId, type ReviewedSection } from "../../review";

/**
 * What a tutor's overruling of a line says of the learner. right: all of its marks, so that what was written is right after all.
 * nothing: none of them, so that it is not. part: some of them, or a price above its marks taken back, which does not say what of
 * it was right.
 */
export interface SaidOf {
  readonly verdict: "right" | "nothing" | "part";
}

/** What overrulings that stand say of the lines that count; null of a line that none was said of, or to which it gives what was computed. */
export function overruledOf({ lines, standing }: ReviewedSection): (list: LineList, at: number) => SaidOf | null {
  const lineOf = new Map(lines.map((line) => [line.id, line]));
  return (list, at) => {
    const id = lineId(list, at);
    const [line, given] = [lineOf.get(id), standing.overrulings.get(id)?.what.marks];
    if (!line || given === undefined || given === line.earned) return null;
    if (given > 0 && given === line.worth) return { verdict: "right" };
    // raised to 0, where the price of the call was more than it earned: nobody says that it was no find
    const isRaised = line.worth > 0 && line.earned < 0;
    return { verdict: given === 0 && !isRaised ? "nothing" : "part" };
  };
}
