import type { Criteria } from "@/lib/criteria";
import { drawQuestions, type Question } from "@/lib/questions";
import { randomStream } from "@/lib/random";
import { DEFAULT_PAPER, type Section } from "@/lib/results";
import type { Truth } from "@/lib/specimen";
import { randomId } from "./random-id";

/** Questions on one piece, other ones every time; none where nothing is sentenced, as before questions were asked. */
export function freshQuestions(
  section: Section,
  truth: Truth,
  criteria: Criteria | null,
  count = DEFAULT_PAPER[section].questions,
): readonly Question[] {
  if (!criteria) return [];
  return drawQuestions({ section, truth, criteria }, count, randomStream(randomId()));
}
