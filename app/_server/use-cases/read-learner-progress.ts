import type { Caller } from "../caller";
import { requireOwnLearner } from "../permissions";
import { progressOf } from "../progress/progress-of";

/** How a learner of the calling tutor's gets on, as the learner sees it. */
export async function readLearnerProgress(caller: Caller, learnerId: string) {
  const own = await requireOwnLearner(caller, learnerId);
  if (!own.ok) return own;
  const { id, name } = own.learner;
  return { ok: true, person: { id, name }, progress: await progressOf(id) } as const;
}
