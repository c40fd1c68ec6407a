import type { EyeRound, EyeRoundView } from "@/lib/eye";
import { askedOf } from "@/lib/eye-tasks";
import { readEyeTasks, type TaskStanding } from "@/prisma/stores/eye-rounds";

/** So many tasks are told ahead: the one at hand and the next, whose windows are fetched meanwhile. */
export const TOLD_AHEAD = 2;

/** A round as its learner may see it. */
export async function roundView(
  { id, drill, naming, isTimed, finishedAt }: EyeRound,
  standing: readonly TaskStanding[],
): Promise<EyeRoundView> {
  const isDone = finishedAt !== null;
  const ahead = isDone ? [] : standing.filter(({ result }) => result === null).slice(0, TOLD_AHEAD);
  const tasks = await readEyeTasks(ahead.map((one) => one.id));
  return {
    id,
    drill,
    naming,
    isTimed,
    stage: isDone ? "done" : standing.length === 0 ? "waiting" : "asking",
    marks: standing.map(({ result }) => (result ? result.isRight : null)),
    tasks: ahead.flatMap((one) => {
      const task = tasks.get(one.id);
      return task ? [askedOf(task, one.id, one.number)] : [];
    }),
    results: standing.flatMap(({ result }) => (result ? [result] : [])),
  };
}
