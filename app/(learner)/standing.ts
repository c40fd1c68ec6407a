import { SECTION_WORDS } from "@/app/_ui/section-names";
import type { Practice, SectionMark } from "@/lib/practice";
import { shownMark } from "@/lib/results";

/** One sentence on where somebody stands, from their handed-in practices, the latest first, and how many are unfinished. */
export function describeStanding(handedIn: readonly Pick<Practice, "marks">[], openCount: number): string {
  if (handedIn.length === 0) return describeBeginning(openCount);
  const count = handedIn.length === 1 ? "one piece" : `${handedIn.length} pieces`;
  return `You have handed in ${count}; on the last one ${describeSections(handedIn[0].marks)}.${describeOpen(openCount)}`;
}

function describeBeginning(openCount: number): string {
  if (openCount === 0) {
    return "Nothing handed in yet. Your first weld is waiting: look at it, measure it, write down what you see, hand it in.";
  }
  const pieces = openCount === 1 ? "Your first piece is" : `Your first ${openCount} pieces are`;
  return `Nothing handed in yet. ${pieces} on the bench: look, measure, write down what you see, hand it in.`;
}

function describeOpen(openCount: number): string {
  if (openCount === 0) return "";
  return openCount === 1
    ? " One more lies unfinished on your bench."
    : ` ${openCount} more lie unfinished on your bench.`;
}

function describeSections(marks: readonly SectionMark[]): string {
  if (marks.every(({ isPassed }) => isPassed)) return marks.length === 1 ? "you passed" : "both faces passed";
  return marks
    .map((mark) => {
      if (mark.isPassed) return `the ${SECTION_WORDS[mark.section]} passed`;
      const missing = mark.passMark - shownMark(mark.markThousandths);
      return `the ${SECTION_WORDS[mark.section]} fell ${missing.toFixed(1)} marks short`;
    })
    .join(" and ");
}
