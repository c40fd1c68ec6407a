import type { ImperfectionType } from "@/lib/imperfections";
import { listMembers } from "@/prisma/stores/classes";
import { listObservedPieces } from "@/prisma/stores/progress";
import type { Caller } from "../caller";
import { requireOwnClass } from "../permissions";

/** So many sections are read at once, and so many are looked through at most. */
const AT_ONCE = 20;
const AT_MOST = 400;

/**
 * The practice of a class, the latest, on whose piece somebody missed an imperfection of a type, for its tutors; where nobody did, one
 * on which it was found; null where the latest sections have none.
 */
export async function findPieceToShow(caller: Caller, classId: string, type: ImperfectionType) {
  const own = await requireOwnClass(caller, classId);
  if (!own.ok) return own;
  const members = (await listMembers(classId)).filter(({ leftAt }) => leftAt === null);
  const ids = members.map(({ person }) => person.id);
  let found: string | null = null;
  for (let from = 0; from < AT_MOST; from += AT_ONCE) {
    const pieces = await listObservedPieces(classId, ids, { from, atMost: AT_ONCE });
    for (const { practiceId, observations } of pieces) {
      const those = observations.truths.filter((truth) => truth.type === type && !truth.neutral);
      if (those.some((truth) => !truth.found)) return { ok: true, practiceId } as const;
      if (those.length > 0) found ??= practiceId;
    }
    if (pieces.length < AT_ONCE) break;
  }
  return { ok: true, practiceId: found } as const;
}
