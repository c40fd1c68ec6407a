import { findUnfinishedRound, listEyeRounds } from "@/prisma/stores/eye-rounds";
import { listSetDrillsFor } from "@/prisma/stores/set-drills";
import type { Caller } from "../caller";
import { requireSignedIn } from "../permissions";

/** So many rounds tell how somebody sees at present. Common practice, no source. */
const LAST = 10;
/** A round that was left longer ago is not offered any more. */
const OFFERED_FOR_MS = 7 * 24 * 3600_000;

/** The caller's drills for the eye: what is set them, a round that they left, and how the last ones went. */
export async function readEyeDrills(caller: Caller) {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  const { id } = signedIn.actor;
  const [set, unfinished, rounds] = await Promise.all([
    listSetDrillsFor(id),
    findUnfinishedRound(id, new Date(caller.clock().getTime() - OFFERED_FOR_MS)),
    listEyeRounds(id, LAST),
  ]);
  return { ok: true, set: set.filter(({ isDone }) => !isDone), unfinished, rounds } as const;
}
