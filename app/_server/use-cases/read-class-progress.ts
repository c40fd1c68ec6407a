import { addOverviews, EMPTY_OVERVIEW } from "@/lib/progress";
import { listMembers } from "@/prisma/stores/classes";
import { readOverviews } from "@/prisma/stores/progress";
import type { Caller } from "../caller";
import { requireOwnClass } from "../permissions";

const NONE = { overview: EMPTY_OVERVIEW, isCurrent: true };

/**
 * How everybody in a class gets on, for its tutors, and the class together. It reads extracts of tallies and nothing else, so that
 * it opens as fast after years. Whose are being built anew is counted in `beingBuilt` and empty meanwhile.
 */
export async function readClassProgress(caller: Caller, classId: string) {
  const own = await requireOwnClass(caller, classId);
  if (!own.ok) return own;
  const members = (await listMembers(classId)).filter(({ leftAt }) => leftAt === null);
  const kept = await readOverviews(members.map(({ person }) => person.id));
  const learners = members.map(({ person: { id, name } }) => ({ person: { id, name }, ...(kept.get(id) ?? NONE) }));
  return {
    ok: true,
    group: own.group,
    learners,
    beingBuilt: learners.filter(({ isCurrent }) => !isCurrent).length,
    together: learners.reduce((sum, { overview }) => addOverviews(sum, overview), EMPTY_OVERVIEW),
  } as const;
}
