import { endSessions } from "@/prisma/stores/sessions";
import type { Caller } from "../caller";
import { requireOwnLearner } from "../permissions";

/** A tutor signs one of their learners out on every device; the password stays as it is. */
export async function signOutLearner(caller: Caller, learnerId: string) {
  const own = await requireOwnLearner(caller, learnerId);
  if (!own.ok) return own;
  return { ok: true, learner: own.learner, ended: await endSessions(own.learner.id, null) } as const;
}
