import type { LineOfResult } from "@/lib/review";

/** What overruling a line does to the learner's progress, by the kind of line. */
export function progressWords({ list, worth, earned }: Pick<LineOfResult, "list" | "worth" | "earned">): string {
  if (list !== "indications") return OF_LIST[list];
  if (worth === 0) return "In the learner’s progress it is then no false call.";
  // raised to 0 it stays a find
  return earned < 0
    ? "In the learner’s progress, with all marks it counts as found and named right. Any fewer change the mark alone."
    : "In the learner’s progress, with all marks it counts as found and named right, with 0 as missed. A part of the marks changes the mark alone; a miss that gets a part counts neither as found nor as missed.";
}

const OF_LIST: Readonly<Record<Exclude<LineOfResult["list"], "indications">, string>> = {
  dimensions:
    "In the learner’s progress, with all marks this reading is left out, since it is not known by how much it is off. Any fewer change the mark alone.",
  statements: "Progress does not go by statements: this changes the mark alone.",
  sentences:
    "In the learner’s progress, with all marks the sentence counts as right; one that was right and gets 0 is left out. Anything else changes the mark alone.",
  questions:
    "In the learner’s progress, with all marks the answer counts as right, and a blank one is left out; a right one that gets 0 is left out as well. Anything else changes the mark alone.",
};
