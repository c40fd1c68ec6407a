import type { QuestionLine } from "../../results";
import type { ReviewedSection } from "../../review";
import { overruledOf } from "./overruled";

/** An answer that tells something of a learner, and of its question. */
export interface CountingAnswer {
  readonly line: QuestionLine;
  /** A tutor gave it in full, though it is not the one by the key. */
  readonly isRightAfterAll: boolean;
}

/**
 * The answers of a section that count. Questions that were annulled are left out, and what was overruled so that it is not known
 * what was right of it: a right answer that was given nothing, and none that was given in full.
 */
export function countingAnswers(review: ReviewedSection): readonly CountingAnswer[] {
  const says = overruledOf(review);
  return (review.base.questions?.lines ?? []).flatMap((line, at) => {
    if (review.standing.annulled.has(line.question)) return [];
    const verdict = says("questions", at)?.verdict;
    const isRightAfterAll = verdict === "right";
    return verdict === "nothing" || (isRightAfterAll && line.written === null) ? [] : [{ line, isRightAfterAll }];
  });
}
