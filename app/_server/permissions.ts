import type { ClassGroup } from "@/lib/classes";
import type { Practice } from "@/lib/practice";
import type { Person } from "@/lib/workshop";
import { readClassOf } from "@/prisma/stores/classes";
import { readLearnerOf } from "@/prisma/stores/people";
import { readPractice } from "@/prisma/stores/practices";
import type { Actor, Caller } from "./caller";
import { type Refusal, refuse } from "./refusal";

type Permitted<Value> = ({ readonly ok: true } & Value) | Refusal;

/** Somebody who is signed in with a password of their own: a one-time code opens nothing but the choice of one. */
export function requireSignedIn({ actor }: Caller): Permitted<{ actor: Actor }> {
  if (!actor) return refuse("not-signed-in");
  return actor.hasOneTimeCode ? refuse("own-password-needed") : { ok: true, actor };
}

/** Somebody who has yet to choose a password of their own. */
export function requireOneTimeCode({ actor }: Caller): Permitted<{ actor: Actor }> {
  if (!actor) return refuse("not-signed-in");
  return actor.hasOneTimeCode ? { ok: true, actor } : refuse("not-permitted");
}

export function requireTutor(caller: Caller): Permitted<{ actor: Actor }> {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  return signedIn.actor.role === "tutor" ? signedIn : refuse("not-permitted");
}

/** A class that the caller is a tutor of. Another tutor's is refused exactly like one that does not exist. */
export async function requireOwnClass(
  caller: Caller,
  id: string,
): Promise<Permitted<{ actor: Actor; group: ClassGroup }>> {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  const group = await readClassOf(tutor.actor.id, id);
  return group ? { ok: true, actor: tutor.actor, group } : refuse("no-such-class");
}

/** The same, and in use: an archived class is only read. */
export async function requireClassInUse(
  caller: Caller,
  id: string,
): Promise<Permitted<{ actor: Actor; group: ClassGroup }>> {
  const own = await requireOwnClass(caller, id);
  return own.ok && own.group.archivedAt ? refuse("class-archived") : own;
}

/**
 * A learner that the calling tutor works with: in a class of theirs, or in no class at all. Another class's learner is
 * refused exactly like one who does not exist.
 */
export async function requireOwnLearner(caller: Caller, id: string): Promise<Permitted<{ learner: Person }>> {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  const learner = await readLearnerOf(tutor.actor.id, id);
  return learner ? { ok: true, learner } : refuse("no-such-learner");
}

/** The caller's own practice. Somebody else's is refused exactly like one that does not exist. */
export async function requireOwnPractice(caller: Caller, id: string): Promise<Permitted<{ practice: Practice }>> {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  const practice = await readPractice(id);
  if (!practice || practice.userId !== signedIn.actor.id) return refuse("no-such-practice");
  return { ok: true, practice };
}

/** A practice of the caller's own, or for a tutor one of a learner they work with. */
export async function requireReadablePractice(
  caller: Caller,
  id: string,
): Promise<Permitted<{ practice: Practice; isOwn: boolean }>> {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  const practice = await readPractice(id);
  if (!practice) return refuse("no-such-practice");
  const { actor } = signedIn;
  if (practice.userId === actor.id) return { ok: true, practice, isOwn: true };
  const isTheirs = actor.role === "tutor" && (await readLearnerOf(actor.id, practice.userId)) !== null;
  return isTheirs ? { ok: true, practice, isOwn: false } : refuse("no-such-practice");
}

/** A practice whose piece the caller may look at: their own, and for a tutor what their learners have handed in. */
export async function requireVisiblePiece(caller: Caller, id: string): Promise<Permitted<{ practice: Practice }>> {
  const readable = await requireReadablePractice(caller, id);
  if (!readable.ok) return readable;
  const mayLook = readable.isOwn || readable.practice.state === "handed-in";
  return mayLook ? readable : refuse("no-such-practice");
}
