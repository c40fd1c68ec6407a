import { RULE_VERSION } from "@/lib/results";
import { mayShowMarks } from "@/lib/sittings";
import { readHandedInPractice } from "@/prisma/stores/practices";
import { listSittingsOf, type StoredSitting } from "@/prisma/stores/sittings";
import type { Caller } from "../caller";
import { refuse } from "../refusal";
import { sheetViewOf } from "../sheet-view-of";
import { requireReviewableRun } from "../sittings/reviewing";

/**
 * The mark sheet of a section of a sitting for the tutors of its class, to act on before and after release: with the same
 * learner's later goes at the section, which depend on its verdict.
 */
export async function readReview(caller: Caller, runId: string) {
  const own = await requireReviewableRun(caller, runId);
  if (!own.ok) return own;
  const { run, stored } = own;
  const sheet = await readHandedInPractice(run.practiceId);
  if (!sheet?.practice.handedInAt) return refuse("not-reviewable");
  const sat = stored.runs.find((one) => one.run.id === runId)?.run;
  return {
    ok: true,
    runId,
    sittingId: run.sittingId,
    practiceId: run.practiceId,
    paperName: stored.sitting.paper.name,
    className: stored.groupName,
    /** Whether the learner may read it already: it is released, or the paper tells marks at once. */
    isKnown: sat !== undefined && mayShowMarks(sat, stored.sitting, caller.clock()),
    learnerName: run.learnerName,
    section: run.section,
    isBorderline: sat?.isBorderline === true,
    closedAt: sheet.practice.handedInAt,
    sheet: sheetViewOf(sheet),
    /** The version that it was marked by, where that is not the present one. */
    olderRule: run.first.ruleVersion === RULE_VERSION ? null : run.first.ruleVersion,
    later: laterGoes(await listSittingsOf(stored.groupId, stored.paperId), stored, runId),
  } as const;
}

/** Goes of the same learner at the same section in later sittings of the paper, sat or to be sat, but for void ones. */
function laterGoes(sittings: readonly StoredSitting[], { runs, sitting }: StoredSitting, runId: string) {
  const own = runs.find(({ run }) => run.id === runId)?.run;
  return sittings.flatMap((other) => {
    const { id, plannedAt, state } = other.sitting;
    if (id === sitting.id || state === "void" || plannedAt < sitting.plannedAt) return [];
    return other.runs.flatMap(({ run }) => {
      if (run.userId !== own?.userId || run.section !== own.section || run.state === "void") return [];
      const isToCome = run.state === "waiting" && state !== "closed" && state !== "released";
      if (run.state === "waiting" && !isToCome) return [];
      return [{ sittingId: id, plannedAt, isToCome }];
    });
  });
}
