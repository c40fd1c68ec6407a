import { sourceOfKind } from "@/lib/questions";
import type { QuestionLine } from "@/lib/results";
import { type ReviewedSection, reviewed } from "@/lib/review";
import type { ReviewableRun } from "@/prisma/stores/reviews";

/** Somebody who was asked a question, with the name that it has in their section. */
export interface Asked {
  readonly run: ReviewableRun;
  readonly question: string;
  readonly now: ReviewedSection;
}

/**
 * Everybody in a sitting who was asked the same question. Each learner's questions are drawn and numbered by themselves, so it
 * is known by what it asks: kind, wording and right answer, whatever the wrong options are. What is asked about a piece or
 * its drawing is the same only on the same piece.
 */
export function everybodyAsked(
  runs: readonly ReviewableRun[],
  { runId, specimenId }: Pick<ReviewableRun, "runId" | "specimenId">,
  question: string,
): readonly Asked[] {
  const all = runs.map((run) => ({ run, now: reviewed(run.first, run.acts) }));
  const line = lineOf(all.find(({ run }) => run.runId === runId)?.now, question);
  if (!line) return [];
  const source = sourceOfKind(line.kind);
  const isOfTrade = source === "trade" || source === "criteria";
  return all.flatMap(({ run, now }) => {
    if (!isOfTrade && run.specimenId !== specimenId) return [];
    const found = now.base.questions?.lines.find((other) => isSame(other, line));
    return found ? [{ run, now, question: found.question }] : [];
  });
}

export const lineOf = (section: ReviewedSection | undefined, question: string): QuestionLine | null =>
  section?.base.questions?.lines.find((line) => line.question === question) ?? null;

const isSame = (one: QuestionLine, other: QuestionLine): boolean =>
  one.kind === other.kind && one.stem === other.stem && one.options[one.key] === other.options[other.key];
