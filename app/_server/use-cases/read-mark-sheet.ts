import { readPerson } from "@/prisma/stores/people";
import { readHandedInPractice, readPractice } from "@/prisma/stores/practices";
import type { Caller } from "../caller";
import { requireSignedIn } from "../permissions";
import { refuse } from "../refusal";

/** A handed-in practice with truth and account: for whoever handed it in, and for a tutor. */
export async function readMarkSheet(caller: Caller, id: string) {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  const practice = await readPractice(id);
  const isOwn = practice?.userId === signedIn.actor.id;
  if (!practice || !(isOwn || signedIn.actor.role === "tutor")) return refuse("no-such-practice");
  const sheet = await readHandedInPractice(id);
  const learner = await readPerson(practice.userId);
  if (!sheet || !learner) return refuse("not-handed-in");
  return { ok: true, sheet, learner, isOwn } as const;
}
