import { listClassesOf, listMembers } from "@/prisma/stores/classes";
import { listPapers } from "@/prisma/stores/papers";
import { listSittingsOf } from "@/prisma/stores/sittings";
import type { Caller } from "../caller";
import { requireTutor } from "../permissions";
import { dueInClass } from "../sittings/due-in-class";

/** What a sitting can be planned with: classes in use with their members, papers at hand, and who has what due. */
export async function readPlanChoices(caller: Caller) {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  const now = caller.clock();
  const [groups, papers] = await Promise.all([listClassesOf(tutor.actor.id), listPapers()]);
  const each = await Promise.all(
    groups
      .filter(({ archivedAt }) => archivedAt === null)
      .map(async (group) => ({
        id: group.id,
        name: group.name,
        members: (await listMembers(group.id))
          .filter(({ leftAt }) => leftAt === null)
          .map(({ person, timeFactor }) => ({ id: person.id, name: person.name, timeFactor })),
        dues: await dueInClass(group, await listSittingsOf(group.id)),
      })),
  );
  return {
    ok: true,
    now,
    classes: each.map(({ dues: _, ...group }) => group),
    papers: papers.filter(({ archivedAt }) => archivedAt === null).map(({ id, current: { paper } }) => ({ id, paper })),
    dues: each.flatMap(({ dues }) => dues),
  } as const;
}
