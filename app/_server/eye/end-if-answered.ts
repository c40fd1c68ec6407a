import type { EyeRound } from "@/lib/eye";
import { finishEyeRound, type TaskStanding } from "@/prisma/stores/eye-rounds";

interface Standing {
  readonly round: EyeRound;
  readonly tasks: readonly TaskStanding[];
}

/** Ends a round all of whose tasks are answered, also where that was cut short before. */
export async function endIfAnswered({ round, tasks }: Standing, now: Date): Promise<Standing> {
  const isLeft = round.finishedAt !== null || tasks.length === 0 || tasks.some(({ result }) => result === null);
  if (isLeft) return { round, tasks };
  await finishEyeRound(round.id, now);
  return { round: { ...round, finishedAt: now }, tasks };
}
