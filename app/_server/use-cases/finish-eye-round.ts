import { endBurst, readEyeRound } from "@/prisma/stores/eye-rounds";
import type { Caller } from "../caller";
import { roundView, TOLD_AHEAD } from "../eye/round-view";
import { requireOwnEyeRound } from "../permissions";

/**
 * Ends a burst whose clock has run out; what was not answered is not counted, and not kept. Any other round ends with its last answer and stays
 * as it stands, or a drill that was set would be done after one task.
 */
export async function finishEyeRound(caller: Caller, id: string) {
  const own = await requireOwnEyeRound(caller, id);
  if (!own.ok) return own;
  const { drill, isTimed } = own.round;
  if (drill === "burst" && isTimed) await endBurst(id, caller.clock(), TOLD_AHEAD);
  // an answer may have come beside it
  const { round, tasks } = (await readEyeRound(id)) ?? own;
  return { ok: true, round: await roundView(round, tasks) } as const;
}
