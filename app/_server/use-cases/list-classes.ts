import { listClassesOf } from "@/prisma/stores/classes";
import type { Caller } from "../caller";
import { requireTutor } from "../permissions";

/** The classes that the calling tutor works with, by name, those in use and those that are archived. */
export async function listClasses(caller: Caller) {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  const classes = await listClassesOf(tutor.actor.id);
  return {
    ok: true,
    inUse: classes.filter(({ archivedAt }) => archivedAt === null),
    archived: classes.filter(({ archivedAt }) => archivedAt !== null),
  } as const;
}
