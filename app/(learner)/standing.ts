import type { Practice, SectionMark } from "@/lib/practice";
import { shownMark } from "@/lib/results";

const NAMES = { cap: "cap face", root: "root face" } as const;

/** One sentence on where a learner stands, from their handed-in practices, the latest first. */
export function describeStanding(handedIn: readonly Pick<Practice, "marks">[]): string {
  if (handedIn.length === 0) {
    return "Nothing handed in yet. Your first plate is waiting: look at both faces, write down what you see, hand it in.";
  }
  const count = handedIn.length === 1 ? "one plate" : `${handedIn.length} plates`;
  return `You have handed in ${count}; on the last one ${describeSections(handedIn[0].marks)}.`;
}

function describeSections(marks: readonly SectionMark[]): string {
  if (marks.every(({ isPassed }) => isPassed)) return "both faces passed";
  return marks
    .map((mark) => {
      if (mark.isPassed) return `the ${NAMES[mark.section]} passed`;
      const missing = mark.passMark - shownMark(mark.markThousandths);
      return `the ${NAMES[mark.section]} fell ${missing.toFixed(1)} marks short`;
    })
    .join(" and ");
}
