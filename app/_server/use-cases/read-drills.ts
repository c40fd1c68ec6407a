import { DRILLS, type Drill, type DrillRound } from "@/lib/drills";
import { listDrillRounds } from "@/prisma/stores/drill-rounds";
import type { Caller } from "../caller";
import { requireSignedIn } from "../permissions";

/** How many rounds of each drill are shown. */
const LAST_SHOWN = 5;

/** The caller's last rounds by drill, the latest first. */
export async function readDrills(caller: Caller) {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  const lists = await Promise.all(
    DRILLS.map(async (drill) => [drill, await listDrillRounds(signedIn.actor.id, drill, LAST_SHOWN)] as const),
  );
  return { ok: true, rounds: Object.fromEntries(lists) as Readonly<Record<Drill, readonly DrillRound[]>> } as const;
}
