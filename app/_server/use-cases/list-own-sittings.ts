import { listSittingsFor } from "@/prisma/stores/sittings";
import type { Caller } from "../caller";
import { requireSignedIn } from "../permissions";
import { ownView } from "../sittings/own-view";

/** The caller's sittings as a learner: those to come, those that are on and those that were, the latest planned first. */
export async function listOwnSittings(caller: Caller) {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  const now = caller.clock();
  const stored = await listSittingsFor(signedIn.actor.id);
  return { ok: true, now, sittings: stored.map((one) => ownView(one, signedIn.actor.id, now)) } as const;
}
