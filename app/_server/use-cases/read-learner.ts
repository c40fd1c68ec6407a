import { readErasureRequest } from "@/prisma/stores/erasure";
import type { Caller } from "../caller";
import { requireOwnLearner } from "../permissions";
import { practicesOf } from "../practices-of";
import { satOfLearner } from "../sat-of-learner";

/** One learner as their tutor sees them: every piece handed in, what they sat, the latest first, and how many are unfinished. */
export async function readLearner(caller: Caller, learnerId: string) {
  const own = await requireOwnLearner(caller, learnerId);
  if (!own.ok) return own;
  const [{ open, handedIn }, sat, erasureAskedAt] = await Promise.all([
    practicesOf(own.learner.id),
    satOfLearner(caller, own.learner.id),
    readErasureRequest(own.learner.id),
  ]);
  // a report that is still being written is the learner's own
  return { ok: true, learner: own.learner, openCount: open.length, handedIn, sat, erasureAskedAt } as const;
}
