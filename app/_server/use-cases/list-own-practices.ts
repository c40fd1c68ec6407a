import type { Caller } from "../caller";
import { requireSignedIn } from "../permissions";
import { practicesOf } from "../practices-of";

/** The caller's practices: unfinished ones, and handed-in ones with their marks, the latest first. */
export async function listOwnPractices(caller: Caller) {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  return { ok: true, person: signedIn.actor, ...(await practicesOf(signedIn.actor.id)) } as const;
}
