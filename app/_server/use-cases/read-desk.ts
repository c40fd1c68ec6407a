import { listClassesOf } from "@/prisma/stores/classes";
import { listErasureRequests } from "@/prisma/stores/erasure";
import { listMarksByLearner } from "@/prisma/stores/marks";
import { listLearnersOf, listLearnersWithoutClass, listPeople } from "@/prisma/stores/people";
import { readWorkshop } from "@/prisma/stores/workshops";
import type { Caller } from "../caller";
import { requireTutor } from "../permissions";
import { refuse } from "../refusal";

/**
 * The tutor's desk: settings, the classes they work with that are in use, the workshop's tutors, and their learners with
 * their last marks and what they have unfinished, those in no class apart.
 */
export async function readDesk(caller: Caller) {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  const settings = await readWorkshop();
  if (!settings) return refuse("not-set-up");
  const [classes, tutors, learners, free, records] = await Promise.all([
    listClassesOf(tutor.actor.id),
    listPeople("tutor"),
    listLearnersOf(tutor.actor.id),
    listLearnersWithoutClass(),
    listMarksByLearner(),
  ]);
  const isFree = new Set(free.map(({ id }) => id));
  const withRecords = learners.map((person) => ({
    person,
    openCount: records.get(person.id)?.openCount ?? 0,
    handedIn: records.get(person.id)?.handedIn ?? [],
  }));
  return {
    ok: true,
    settings,
    classes: classes.filter(({ archivedAt }) => archivedAt === null),
    tutors,
    learners: withRecords,
    /** Who of them asked to be erased. */
    erasureRequests: await listErasureRequests(learners.map(({ id }) => id)),
    withoutClass: withRecords.filter(({ person }) => isFree.has(person.id)),
  } as const;
}
