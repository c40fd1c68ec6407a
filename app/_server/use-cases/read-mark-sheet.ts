import { readPerson } from "@/prisma/stores/people";
import { readHandedInPractice } from "@/prisma/stores/practices";
import type { Caller } from "../caller";
import { requireReadablePractice } from "../permissions";
import { refuse } from "../refusal";

/** A handed-in practice with truth and account: for whoever handed it in, and for their tutors. */
export async function readMarkSheet(caller: Caller, id: string) {
  const readable = await requireReadablePractice(caller, id);
  if (!readable.ok) return readable;
  const { practice, isOwn } = readable;
  const sheet = await readHandedInPractice(id);
  const learner = await readPerson(practice.userId);
  if (!sheet || !learner) return refuse("not-handed-in");
  return { ok: true, sheet, learner, isOwn } as const;
}
