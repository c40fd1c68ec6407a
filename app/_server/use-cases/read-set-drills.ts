import { rightOf } from "@/lib/eye";
import { listMembers } from "@/prisma/stores/classes";
import { listRoundsFor } from "@/prisma/stores/eye-rounds";
import { listSetDrills } from "@/prisma/stores/set-drills";
import type { Caller } from "../caller";
import { requireOwnClass } from "../permissions";

/** So many that were withdrawn are looked back on. */
const LAST = 10;

/** The drills that a class was set, for its tutors: who has done each and how their first round of it went, and who has not. */
export async function readSetDrills(caller: Caller, classId: string) {
  const own = await requireOwnClass(caller, classId);
  if (!own.ok) return own;
  const drills = await listSetDrills(classId, LAST);
  const [members, rounds] = await Promise.all([listMembers(classId), listRoundsFor(drills.map(({ id }) => id))]);
  const present = members.filter(({ leftAt }) => leftAt === null);
  return {
    ok: true,
    isInUse: own.group.archivedAt === null,
    drills: drills.map((drill) => ({
      drill,
      learners: present.map(({ person: { id, name } }) => {
        const first = rounds.find(({ setDrillId, userId }) => setDrillId === drill.id && userId === id);
        return { id, name, done: first ? { at: first.finishedAt, ...rightOf(first.results) } : null };
      }),
    })),
  } as const;
}
