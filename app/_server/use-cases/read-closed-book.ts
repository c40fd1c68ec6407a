import type { Caller } from "../caller";
import { requireSignedIn } from "../permissions";
import { closedBookOf } from "../sittings/closed-book";

/** The sitting in which the caller has a section with a closed book open just now; null where there is none. */
export async function readClosedBook(caller: Caller) {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  const { id, role } = signedIn.actor;
  return { ok: true, sittingId: role === "learner" ? await closedBookOf(id, caller.clock()) : null } as const;
}
