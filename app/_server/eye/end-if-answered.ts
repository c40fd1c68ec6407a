import type { EyeRound } from "@/lib/eye";
import { finishEyeRound, readLastAnswer, type TaskStanding } from "@/prisma/stores/eye-rounds";

interface Standing {
  readonly round: EyeRound;
  readonly tasks: readonly TaskStanding[];
}

/** Ends a round all of whose tasks are answered, also where that was cut short before: with its last answer, however long ago. */
export async function endIfAnswered({ round, tasks }: Standing): Promise<Standing> {
  const isLeft = round.finishedAt !== null || tasks.length === 0 || tasks.some(({ result }) => result === null);
  const finishedAt = isLeft ? null : await readLastAnswer(round.id);
  if (!finishedAt) return { round, tasks };
  await finishEyeRound(round.id, finishedAt);
  return { round: { ...round, finishedAt }, tasks };
}
