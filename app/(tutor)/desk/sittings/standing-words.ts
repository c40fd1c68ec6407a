import { SECTION_WORDS } from "@/app/_ui/section-names";
import type { NextInCourse } from "@/lib/sittings";
import { list } from "./sitting-words";

/** Where a learner stands in a course, in words to a tutor. */
export function standingWords({ isPassed, round, due }: Pick<NextInCourse, "isPassed" | "round" | "due">): string {
  if (isPassed) return "passed every section";
  const among = (why: NextInCourse["due"][number]["why"]) =>
    list(due.filter((one) => one.why === why).map(({ section }) => SECTION_WORDS[section]));
  const sentences = [
    among("re-sit") && `re-sit due: ${among("re-sit")}`,
    among("parallel-piece") && `second piece still to sit: ${among("parallel-piece")}`,
    among("first") && (round > 1 ? `round ${round} due: ${among("first")}` : `still to sit: ${among("first")}`),
  ];
  return sentences.filter(Boolean).join("; ");
}
