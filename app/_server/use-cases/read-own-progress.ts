import type { Caller } from "../caller";
import { requireSignedIn } from "../permissions";
import { progressOf } from "../progress/progress-of";

/** How the caller gets on. Nothing of an open practice, or of a sitting that is not released, is in it. */
export async function readOwnProgress(caller: Caller) {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  const { id, name } = signedIn.actor;
  return { ok: true, person: { id, name }, progress: await progressOf(id) } as const;
}
