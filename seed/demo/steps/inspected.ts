import type { Practice } from "@/lib/practice";
import type { Report } from "@/lib/report";
import { readQuestions } from "@/prisma/stores/report-saves";
import { readTruth } from "@/prisma/stores/specimens";
import type { DemoLearner } from "../classes";
import { daysBetween } from "../days";
import { answersTo } from "../inspector/answer";
import { inspect } from "../inspector/inspect";
import { abilityAfter } from "../inspector/skill";
import { demoStream } from "../writing";

/** What a learner writes of the piece of a practice of theirs at a time; `work` names it, so that each has a stream of its own. */
export async function reportOf(
  { specimenId, criteria }: Pick<Practice, "specimenId" | "criteria">,
  { signInName, skill }: DemoLearner,
  { beganAt, at, work }: { readonly beganAt: Date; readonly at: Date; readonly work: string },
): Promise<Report> {
  const answers = await readTruth(specimenId);
  if (!answers || !criteria) throw new Error(`there is nothing to inspect for ${signInName}, ${work}`);
  const ability = abilityAfter(skill, daysBetween(beganAt, at));
  return inspect(answers.truth, criteria, skill, ability, demoStream(`${signInName}/${work}`));
}

/** The first half of a report, as it is saved on the way. */
export const halfOf = (report: Report): Report => ({
  ...report,
  calls: report.calls.slice(0, Math.ceil(report.calls.length / 2)),
  measures: [],
  statements: [],
  pieceSentence: null,
});

/** The report with answers to the questions that were put once it was closed. */
export async function withAnswers(
  practiceId: string,
  report: Report,
  { signInName, skill }: DemoLearner,
  work: string,
): Promise<Report> {
  const questions = await readQuestions(practiceId);
  return { ...report, answers: answersTo(questions, skill, demoStream(`${signInName}/${work}/questions`)) };
}
