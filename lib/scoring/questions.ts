import type { Place, Question } from "../questions";
import { apportion } from "./apportion";

/** One question as it stands on a mark sheet; marks in thousandths. */
interface QuestionLine {
  /** Id of the question. */
  readonly question: string;
  readonly kind: string;
  readonly stem: string;
  readonly options: Question["options"];
  readonly key: number;
  /** Which option was chosen, 0 to 3; null where none was. */
  readonly written: number | null;
  readonly explanation: string;
  readonly place: Place | null;
  readonly worth: number;
  readonly earned: number;
}

/** What the questions of a section could bring and what they brought. */
interface MarkedQuestions {
  readonly part: "questions";
  readonly worth: number;
  readonly earned: number;
  readonly lines: readonly QuestionLine[];
}

/** An option chosen for a question, by the question's id; null where the choice was taken back. */
export type Answers = Readonly<Record<string, number | null>>;

/**
 * Marks the questions of a section, `whole` thousandths between them in equal parts (to the thousandth, earlier ones first): the
 * right option earns all that a question is worth, any other or none earns nothing and costs nothing. Answers to questions that
 * were not asked count for nothing.
 */
export function markQuestions(questions: readonly Question[], answers: Answers, whole: number): MarkedQuestions {
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
      options,
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
