import { finishEyeRound as storeFinished } from "@/prisma/stores/eye-rounds";
import type { Caller } from "../caller";
import { roundView } from "../eye/round-view";
import { requireOwnEyeRound } from "../permissions";

/** Ends a round where it stands, as the clock of a burst does; what was not answered is not counted. Ended already, it stays so. */
export async function finishEyeRound(caller: Caller, id: string) {
  const own = await requireOwnEyeRound(caller, id);
  if (!own.ok) return own;
  const finishedAt = own.round.finishedAt ?? caller.clock();
  await storeFinished(id, finishedAt);
  return { ok: true, round: await roundView({ ...own.round, finishedAt }, own.tasks) } as const;
}
