import type { Practice } from "@/lib/practice";
import type { SectionObservations } from "@/lib/progress";
import { DEFAULT_PAPER, type SectionOfPaper } from "@/lib/results";
import { DEFAULT_SETTINGS, markSection } from "@/lib/scoring";
import { handIn } from "@/prisma/stores/practices";
import { readQuestions } from "@/prisma/stores/report-saves";
import { readTruth } from "@/prisma/stores/specimens";
import { freshQuestions } from "./draw-questions";
import { observe } from "./progress/observe";
import { randomId } from "./random-id";

/** What a paper says of how a section is marked. */
type MarkedBy = Pick<SectionOfPaper, "weights" | "questions">;

/**
 * Marks a practice as it is stored and closes it with truth and marks, by its paper or the usual one, and with what it tells
 * for progress; `seconds` is the time at the piece. False if it was saved, or marked, meanwhile. Throws where its piece is not
 * made.
 */
export async function markPractice(
  practice: Practice,
  handedInAt: Date,
  seconds: number | null,
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
    sections: [
      {
        id: randomId(),
        section,
        passMark,
        markThousandths: mark,
        isPassed: passed,
        ruleVersion,
        result,
        observations: observed(id, () => observe(result, truth, report, seconds)),
      },
    ],
  });
}

/** Nobody's hand-in fails because progress has nothing to read from it. */
function observed(id: string, make: () => SectionObservations): SectionObservations | null {
  try {
    return make();
  } catch (error) {
    console.error(`practice ${id} could not be observed:`, error instanceof Error ? error.message : error);
    return null;
  }
}
