import { addClassTutor as storeAdded, removeClassTutor as storeRemoved } from "@/prisma/stores/classes";
import { readPerson } from "@/prisma/stores/people";
import type { Caller } from "../caller";
import { requireClassInUse } from "../permissions";
import { refuse } from "../refusal";

/** Lets another tutor of the workshop work with a class, with everything its first tutor may do. */
export async function addClassTutor(caller: Caller, classId: string, tutorId: string) {
  const own = await requireClassInUse(caller, classId);
  if (!own.ok) return own;
  const tutor = await readPerson(tutorId);
  if (tutor?.role !== "tutor") return refuse("no-such-tutor");
  await storeAdded(classId, tutorId, caller.clock());
  return { ok: true } as const;
}

/** Takes a class from one of its tutors, but not from the last. */
export async function removeClassTutor(caller: Caller, classId: string, tutorId: string) {
  const own = await requireClassInUse(caller, classId);
  if (!own.ok) return own;
  if (!own.group.tutors.some(({ id }) => id === tutorId)) return refuse("no-such-tutor");
  return (await storeRemoved(classId, tutorId)) ? ({ ok: true } as const) : refuse("last-tutor");
}
