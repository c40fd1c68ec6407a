import { lineTitle } from "@/app/_marks/line-title";
import { canBeTakenBack, type ReviewAct, resultOfBase, reviewed, takeBackInput } from "@/lib/review";
import { readHandedInPractice } from "@/prisma/stores/practices";
import { type ReviewableRun, readReviewableRuns, storeReviews } from "@/prisma/stores/reviews";
import type { Caller } from "../caller";
import { problemsByField } from "../input-problem";
import { refuse } from "../refusal";
import { sheetViewOf } from "../sheet-view-of";
import { requireReviewableRun, signed } from "../sittings/reviewing";

/**
 * A tutor takes an act on a mark back, with a reason; both stay to be read. A question that was annulled for several learners
 * comes back for all of them.
 */
export async function takeBackReview(caller: Caller, runId: string, input: unknown) {
  const own = await requireReviewableRun(caller, runId);
  if (!own.ok) return own;
  const parsed = takeBackInput.safeParse(input);
  if (!parsed.success) return refuse("invalid-input", { fields: problemsByField(parsed.error) });
  const { act: id, reason } = parsed.data;
  const { run, actor } = own;
  const act = run.acts.find((one) => one.id === id);
  if (!act || !canBeTakenBack(run.acts, id)) return refuse("no-such-act");
  const line = await nameOf(run, act);
  const now = caller.clock();
  const concerned =
    act.what.kind === "annul" ? await sameBatch(run.sittingId, act.what.batch) : [{ run, actId: act.id }];
  const acts = concerned.map((one) =>
    signed(
      one.run,
      { act: "take-back", what: { kind: "take-back", of: one.actId }, reason, details: { line, of: act.what.kind } },
      actor,
      now,
    ),
  );
  return (await storeReviews(acts)) ? ({ ok: true } as const) : refuse("review-changed");
}

/** What of a mark an act was about, in words. */
async function nameOf(run: ReviewableRun, { what }: ReviewAct): Promise<string> {
  const { first, acts } = run;
  switch (what.kind) {
    case "overrule": {
      const sheet = await readHandedInPractice(run.practiceId);
      return sheet ? lineTitle(sheetViewOf(sheet), resultOfBase(what.base, acts, first), what.line) : "";
    }
    case "annul": {
      const { base } = reviewed(first, acts);
      return `Question: ${base.questions?.lines.find(({ question }) => question === what.question)?.stem ?? ""}`;
    }
    default:
      return "The whole section";
  }
}

/** Every act of one annulment that still has a say. */
async function sameBatch(sittingId: string, batch: string) {
  const runs = await readReviewableRuns({ sittingId });
  return runs.flatMap((run) =>
    run.acts.flatMap(({ id, what }) =>
      what.kind === "annul" && what.batch === batch && canBeTakenBack(run.acts, id) ? [{ run, actId: id }] : [],
    ),
  );
}
