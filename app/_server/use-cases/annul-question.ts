import type { ReviewContent } from "@/lib/review";
import { annulInput, questionInput } from "@/lib/review";
import { type ReviewableRun, readReviewableRuns, storeReviews } from "@/prisma/stores/reviews";
import type { Caller } from "../caller";
import { problemsByField } from "../input-problem";
import { randomId } from "../random-id";
import { refuse } from "../refusal";
import { requireReviewableRun, signed, withOneMore } from "../sittings/reviewing";
import { type Asked, everybodyAsked, lineOf } from "../sittings/same-question";

/** What annulling a question would do to everybody in the sitting who was asked it; nothing is changed. */
export async function previewAnnulment(caller: Caller, runId: string, input: unknown) {
  const own = await requireReviewableRun(caller, runId);
  if (!own.ok) return own;
  const parsed = questionInput.safeParse(input);
  if (!parsed.success) return refuse("invalid-input", { fields: problemsByField(parsed.error) });
  const asked = await countingAsked(own.run, parsed.data.question);
  if (asked.length === 0) return refuse("no-such-question");
  return { ok: true, ...effects(asked) } as const;
}

/** A tutor annuls a question for everybody in the sitting who was asked it, all or none, if it does what was looked at. */
export async function annulQuestion(caller: Caller, runId: string, input: unknown) {
  const own = await requireReviewableRun(caller, runId);
  if (!own.ok) return own;
  const parsed = annulInput.safeParse(input);
  if (!parsed.success) return refuse("invalid-input", { fields: problemsByField(parsed.error) });
  const { question, reason, seen } = parsed.data;
  const asked = await countingAsked(own.run, question);
  if (asked.length === 0) return refuse("no-such-question");
  const { marks, verdicts } = effects(asked);
  if (marks !== seen.marks || verdicts !== seen.verdicts) return refuse("review-changed");
  const batch = randomId();
  const now = caller.clock();
  const acts = asked.map((one) => {
    const details = { line: `Question: ${lineOf(one.now, one.question)?.stem ?? ""}` };
    return signed(one.run, { act: "annul", what: annulled(one, batch), reason, details }, own.actor, now);
  });
  return (await storeReviews(acts)) ? ({ ok: true } as const) : refuse("review-changed");
}

const annulled = ({ question }: Asked, batch: string): ReviewContent => ({ kind: "annul", question, batch });

/** Whoever was asked it and has it counted still. */
async function countingAsked(run: ReviewableRun, question: string): Promise<readonly Asked[]> {
  const runs = await readReviewableRuns({ sittingId: run.sittingId });
  return everybodyAsked(runs, run, question).filter((one) => !one.now.standing.annulled.has(one.question));
}

/** How many were asked, how many marks and verdicts change, and each of them before and after. */
function effects(asked: readonly Asked[]) {
  const rows = asked.map((one) => {
    const { before, after } = withOneMore(one.run, annulled(one, ""));
    return {
      runId: one.run.runId,
      learner: one.run.learnerName,
      before: { shown: before.shown, passed: before.passed },
      after: { shown: after.shown, passed: after.passed },
      isMarkChanged: before.mark !== after.mark,
    };
  });
  return {
    asked: rows.length,
    marks: rows.filter(({ isMarkChanged }) => isMarkChanged).length,
    verdicts: rows.filter(({ before, after }) => before.passed !== after.passed).length,
    rows,
  };
}
