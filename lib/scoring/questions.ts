import type { Question } from "../questions";
import type { ChosenOptions } from "../report";
import type { QuestionLine, QuestionsResult } from "../results";
import { apportion } from "./apportion";

/** What marking has to know of a question; where it comes from is none of it. */
export type MarkedQuestion = Omit<Question, "source">;

/**
 * Marks the questions of a section, `whole` thousandths between them in equal parts (to the thousandth, earlier ones first): the
 * right option earns all that a question is worth, any other or none earns nothing and costs nothing. Answers to questions that
 * were not asked count for nothing.
 */
export function markQuestions(
  questions: readonly MarkedQuestion[],
  answers: ChosenOptions,
  whole: number,
): QuestionsResult {
  const worths = apportion(
    whole,
    questions.map(() => 1),
  );
  const lines = questions.map(({ id, kind, stem, options, key, explanation, place }, n): QuestionLine => {
    const written = answers[id] ?? null;
    const worth = worths[n];
    return {
      question: id,
      kind,
      stem,
      options: [...options],
      key,
      written,
      explanation,
      place,
      worth,
      earned: written === key ? worth : 0,
    };
  });
  const earned = lines.reduce((sum, line) => sum + line.earned, 0);
  return { part: "questions", worth: whole, earned, lines };
}
