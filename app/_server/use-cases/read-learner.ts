import { readPerson } from "@/prisma/stores/people";
import type { Caller } from "../caller";
import { requireTutor } from "../permissions";
import { practicesOf } from "../practices-of";
import { refuse } from "../refusal";

/** One learner as a tutor sees them: every plate handed in, the latest first, and how many are unfinished. */
export async function readLearner(caller: Caller, learnerId: string) {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  const learner = await readPerson(learnerId);
  if (learner?.role !== "learner") return refuse("no-such-learner");
  const { open, handedIn } = await practicesOf(learner.id);
  // a report that is still being written is the learner's own
  return { ok: true, learner, openCount: open.length, handedIn } as const;
}
