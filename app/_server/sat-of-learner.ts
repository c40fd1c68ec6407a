import { listClassesOf } from "@/prisma/stores/classes";
import { listClassesSatIn } from "@/prisma/stores/sittings";
import type { Caller } from "./caller";
import { requireTutor } from "./permissions";
import type { SatSection } from "./sitting-views";
import { satInClass } from "./sittings/sat-sections";
import { listOwnAttempts } from "./use-cases/list-own-attempts";

/**
 * What one learner sat, the latest first, as far as the caller may know its marks: the learner's own once they are released, and for
 * a tutor what is over in the classes that they are a tutor of, archived ones included.
 */
export async function satOfLearner(caller: Caller, learnerId: string): Promise<readonly SatSection[]> {
  if (caller.actor?.id === learnerId) {
    const own = await listOwnAttempts(caller);
    return own.ok ? own.attempts : [];
  }
  const tutor = requireTutor(caller);
  if (!tutor.ok) return [];
  const now = caller.clock();
  const [classes, satIn] = await Promise.all([listClassesOf(tutor.actor.id), listClassesSatIn(learnerId)]);
  const sat = await Promise.all(classes.filter(({ id }) => satIn.includes(id)).map(({ id }) => satInClass(id, now)));
  return sat
    .flat()
    .filter(({ userId }) => userId === learnerId)
    .sort((a, b) => b.closedAt.getTime() - a.closedAt.getTime());
}
