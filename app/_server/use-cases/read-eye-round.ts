import { readEyeRound } from "@/prisma/stores/eye-rounds";
import type { Caller } from "../caller";
import { drawTasks } from "../eye/draw-tasks";
import { endIfAnswered } from "../eye/end-if-answered";
import { roundView } from "../eye/round-view";
import type { SpecimenSource } from "../generation/specimen-source";
import { requireOwnEyeRound } from "../permissions";

/** A round of the caller's as it stands; where its tasks are not drawn, they are now, if there is a piece to cut windows from. */
export async function readOwnEyeRound(caller: Caller, id: string, source: SpecimenSource) {
  const own = await requireOwnEyeRound(caller, id);
  if (!own.ok) return own;
  if (own.tasks.length > 0 || own.round.finishedAt) {
    const { round, tasks } = await endIfAnswered(own);
    return { ok: true, round: await roundView(round, tasks) } as const;
  }
  await drawTasks(own.round, source);
  const drawn = await readEyeRound(id);
  return { ok: true, round: await roundView(own.round, drawn?.tasks ?? []) } as const;
}
