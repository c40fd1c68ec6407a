import { type EyeAnswer, eyeAnswerSchema } from "@/lib/eye";
import { isAnswerTo, judge, resultOf } from "@/lib/eye-tasks";
import { type KeptEyeTask, readEyeRound, readEyeTask, answerEyeTask as storeAnswer } from "@/prisma/stores/eye-rounds";
import type { Caller } from "../caller";
import { endIfAnswered } from "../eye/end-if-answered";
import { roundView } from "../eye/round-view";
import { describeProblem } from "../input-problem";
import { requireOwnEyeTask } from "../permissions";
import { refuse } from "../refusal";

/**
 * Judges the answer to a task and tells what was there. The first answer stands: whatever is sent after it is told the same. With
 * the last task its round is finished; what is answered after its end is told and not kept.
 */
export async function answerEyeTask(caller: Caller, id: string, input: unknown) {
  const own = await requireOwnEyeTask(caller, id);
  if (!own.ok) return own;
  const { kept } = own;
  const parsed = eyeAnswerSchema.safeParse(input);
  if (!parsed.success) return refuse("invalid-input", { problem: describeProblem(parsed.error) });
  if (!isAnswerTo(kept.task, parsed.data)) {
    return refuse("invalid-input", { problem: { path: "kind", wanted: kept.task.kind } });
  }
  const told = judge(kept.task, await firstAnswer(kept, parsed.data, caller.clock()));
  const standing = await readEyeRound(kept.round.id);
  if (!standing) return refuse("no-such-eye-task");
  const { round, tasks } = await endIfAnswered(standing);
  return { ok: true, told, round: await roundView(round, tasks) } as const;
}

/** Keeps the answer unless there is one; the one that counts. */
async function firstAnswer({ id, task, round, answer }: KeptEyeTask, given: EyeAnswer, now: Date): Promise<EyeAnswer> {
  if (answer) return answer;
  if (round.finishedAt) return given;
  if (!(await storeAnswer(id, given, resultOf(task, judge(task, given)), now))) {
    return (await readEyeTask(id))?.answer ?? given;
  }
  return given;
}
