import type { Practice } from "@/lib/practice";
import { DEFAULT_PAPER, type SectionOfPaper } from "@/lib/results";
import { DEFAULT_SETTINGS, markSection } from "@/lib/scoring";
import { handIn, readQuestions } from "@/prisma/stores/practices";
import { readTruth } from "@/prisma/stores/specimens";
import { freshQuestions } from "./draw-questions";
import { randomId } from "./random-id";

/** What a paper says of how a section is marked. */
type MarkedBy = Pick<SectionOfPaper, "weights" | "questions">;

/**
 * Marks a practice as it is stored and closes it with truth and marks, by its paper or the usual one. False if it was saved,
 * or marked, meanwhile. Throws where its piece is not made.
 */
export async function markPractice(
  practice: Practice,
  handedInAt: Date,
  { weights, questions: questionCount }: MarkedBy = DEFAULT_PAPER[practice.section],
): Promise<boolean> {
  const { id, specimenId, report, sequence, section, passMark, criteria, reportClosedAt } = practice;
  const answers = await readTruth(specimenId);
  if (!answers) throw new Error(`practice ${id} was closed without a piece`);
  const { truth } = answers;
  const questions = reportClosedAt ? await readQuestions(id) : freshQuestions(section, truth, criteria, questionCount);
  const settings = { ...DEFAULT_SETTINGS[section], weights, passMark, criteria };
  const result = markSection(section, truth, report, settings, questions);
  const { mark, passed, ruleVersion } = result;
  return handIn({
    id,
    sequence,
    reportClosedAt,
    ...answers,
    handedInAt,
    sections: [{ id: randomId(), section, passMark, markThousandths: mark, isPassed: passed, ruleVersion, result }],
  });
}
