import { listClassesOf, listMembers } from "@/prisma/stores/classes";
import { listMarksByLearner } from "@/prisma/stores/marks";
import { listPeople } from "@/prisma/stores/people";
import type { Caller } from "../caller";
import { requireOwnClass } from "../permissions";

/** A class with everybody in it and their marks, who has left it, and where members could be moved to. */
export async function readClass(caller: Caller, id: string) {
  const own = await requireOwnClass(caller, id);
  if (!own.ok) return own;
  const { actor, group } = own;
  const [everybody, records, classes, tutors] = await Promise.all([
    listMembers(id),
    listMarksByLearner(),
    listClassesOf(actor.id),
    listPeople("tutor"),
  ]);
  return {
    ok: true,
    group,
    members: everybody
      .filter(({ leftAt }) => leftAt === null)
      .map((member) => ({
        ...member,
        openCount: records.get(member.person.id)?.openCount ?? 0,
        handedIn: records.get(member.person.id)?.handedIn ?? [],
      })),
    // only that they were here: their work is no longer this class's to see
    left: everybody.flatMap(({ person, leftAt }) => (leftAt ? [{ id: person.id, name: person.name, leftAt }] : [])),
    otherClasses: classes.filter((other) => other.id !== id && other.archivedAt === null),
    otherTutors: tutors.filter((tutor) => !group.tutors.some((one) => one.id === tutor.id)),
  } as const;
}
