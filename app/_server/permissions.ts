import type { Practice } from "@/lib/practice";
import { readPractice } from "@/prisma/stores/practices";
import type { Actor, Caller } from "./caller";
import { type Refusal, refuse } from "./refusal";

type Permitted<Value> = ({ readonly ok: true } & Value) | Refusal;

export function requireSignedIn({ actor }: Caller): Permitted<{ actor: Actor }> {
  return actor ? { ok: true, actor } : refuse("not-signed-in");
}

export function requireTutor(caller: Caller): Permitted<{ actor: Actor }> {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  return signedIn.actor.role === "tutor" ? signedIn : refuse("not-permitted");
}

/** The caller's own practice. Somebody else's is refused exactly like one that does not exist. */
export async function requireOwnPractice(caller: Caller, id: string): Promise<Permitted<{ practice: Practice }>> {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  const practice = await readPractice(id);
  if (!practice || practice.userId !== signedIn.actor.id) return refuse("no-such-practice");
  return { ok: true, practice };
}

/** A practice whose piece the caller may look at: their own, and for a tutor every one that is handed in. */
export async function requireVisiblePiece(caller: Caller, id: string): Promise<Permitted<{ practice: Practice }>> {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  const practice = await readPractice(id);
  const { actor } = signedIn;
  const mayLook = practice?.userId === actor.id || (actor.role === "tutor" && practice?.state === "handed-in");
  return practice && mayLook ? { ok: true, practice } : refuse("no-such-practice");
}
