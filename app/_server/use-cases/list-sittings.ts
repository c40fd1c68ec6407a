import { listSittingsOf } from "@/prisma/stores/sittings";
import type { Caller } from "../caller";
import { requireOwnClass } from "../permissions";
import { byClock } from "../sittings/change-sitting";

/** The sittings of a class for its tutors, the latest planned first. */
export async function listSittings(caller: Caller, classId: string) {
  const own = await requireOwnClass(caller, classId);
  if (!own.ok) return own;
  const now = caller.clock();
  const stored = await listSittingsOf(classId);
  return {
    ok: true,
    now,
    sittings: stored.map((one) => {
      const { sitting, runs } = byClock(one, now);
      const { id, state, plannedAt, paper } = sitting;
      return {
        id,
        state,
        plannedAt,
        paperId: one.paperId,
        paperName: paper.name,
        learners: new Set(runs.map(({ userId }) => userId)).size,
        sections: runs.length,
        closed: runs.filter(({ closedAt }) => closedAt !== null).length,
      };
    }),
  } as const;
}
