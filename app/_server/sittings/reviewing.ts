import { type ReviewContent, type ReviewedSection, reviewed } from "@/lib/review";
import type { AuditEntry } from "@/prisma/stores/audit";
import { type ReviewableRun, type ReviewToStore, readReviewableRuns } from "@/prisma/stores/reviews";
import { readSitting, type StoredSitting } from "@/prisma/stores/sittings";
import type { Actor, Caller } from "../caller";
import { requireRunOfClass } from "../permissions";
import { type Refusal, refuse } from "../refusal";
import { byClock } from "./change-sitting";

type Reviewable = {
  readonly ok: true;
  readonly actor: Actor;
  readonly run: ReviewableRun;
  readonly stored: StoredSitting;
};

/** A marked section of a sitting that is over, of a class that the caller is a tutor of. */
export async function requireReviewableRun(caller: Caller, runId: string): Promise<Reviewable | Refusal> {
  const own = await requireRunOfClass(caller, runId);
  if (!own.ok) return own;
  const { actor, sittingId } = own;
  const stored = await readSitting(sittingId);
  if (!stored) return refuse("no-such-run");
  const { state } = byClock(stored, caller.clock()).sitting;
  const [run] = state === "closed" || state === "released" ? await readReviewableRuns({ sittingId, runId }) : [];
  return run ? { ok: true, actor, run, stored } : refuse("not-reviewable");
}

/** A mark as it stands, and as one more act would leave it. */
export interface BeforeAndAfter {
  readonly before: ReviewedSection;
  readonly after: ReviewedSection;
}

/** What one more act makes of a mark. */
export function withOneMore({ first, acts }: ReviewableRun, what: ReviewContent): BeforeAndAfter {
  const id = 1 + Math.max(0, ...acts.map((act) => act.id));
  const next = { id, at: new Date(0), by: { id: "", name: "" }, reason: "", what };
  return { before: reviewed(first, acts), after: reviewed(first, [...acts, next]) };
}

export interface ActOnMark {
  readonly act: "overrule" | "annul" | "mark-again" | "take-back";
  readonly what: ReviewContent;
  readonly reason: string;
  /** What it is about, for the log; marks before and after are added. */
  readonly details: AuditEntry["details"];
}

/** One act as it is stored: signed and dated, with the mark that it leads to and its audit entry. */
export function signed(
  run: ReviewableRun,
  { act, what, reason, details }: ActOnMark,
  actor: Actor,
  at: Date,
): ReviewToStore {
  const { before, after } = withOneMore(run, what);
  const isChanged = before.mark !== after.mark;
  const verdict = ({ passed }: ReviewedSection) => (passed ? "passed" : "not passed");
  return {
    attemptId: run.attemptId,
    revision: run.revision,
    act: { at, by: { id: actor.id, name: actor.name }, reason, what },
    reviewed: {
      markThousandths: after.mark,
      isPassed: after.passed,
      at: isChanged ? at : (run.reviewedAt ?? at),
    },
    audit: {
      at,
      actorId: actor.id,
      act,
      subject: { kind: "run", id: run.runId },
      reason,
      details: {
        ...details,
        markBefore: before.mark,
        markAfter: after.mark,
        verdictBefore: verdict(before),
        verdictAfter: verdict(after),
      },
    },
  };
}
