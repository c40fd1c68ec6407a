import { listClassesOf } from "@/prisma/stores/classes";
import { listSittingsOf } from "@/prisma/stores/sittings";
import type { Caller } from "../caller";
import { requireTutor } from "../permissions";
import { dueInClass } from "../sittings/due-in-class";
import { listedSitting } from "../sittings/listed-sitting";

/**
 * Everything about sittings on the calling tutor's desk: those of every class in use that they are a tutor of, the latest
 * planned first, and what is due again.
 */
export async function readSittingsDesk(caller: Caller) {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  const now = caller.clock();
  const classes = (await listClassesOf(tutor.actor.id)).filter(({ archivedAt }) => archivedAt === null);
  const each = await Promise.all(
    classes.map(async (group) => {
      const stored = await listSittingsOf(group.id);
      return { sittings: stored.map((one) => listedSitting(one, now)), dues: await dueInClass(group, stored) };
    }),
  );
  return {
    ok: true,
    now,
    hasClass: classes.length > 0,
    sittings: each
      .flatMap(({ sittings }) => sittings)
      .sort((a, b) => b.plannedAt.getTime() - a.plannedAt.getTime() || (a.id < b.id ? -1 : 1)),
    dues: each.flatMap(({ dues }) => dues),
  } as const;
}
