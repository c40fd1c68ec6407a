import { readPerson, replacePassword } from "@/prisma/stores/people";
import type { Caller } from "../caller";
import { hashPassword } from "../passwords";
import { requireTutor } from "../permissions";
import { randomPassword } from "../random-id";
import { refuse } from "../refusal";

/** The tutor gives a learner who forgot theirs a new password, told this once; it signs the learner out everywhere. */
export async function renewPassword(caller: Caller, learnerId: string) {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  const learner = await readPerson(learnerId);
  if (learner?.role !== "learner") return refuse("no-such-learner");
  const password = randomPassword();
  await replacePassword(learner.id, await hashPassword(password), caller.clock());
  return { ok: true, name: learner.name, signInName: learner.signInName, password } as const;
}
