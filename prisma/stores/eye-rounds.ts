import type { EyeAnswer, EyeResult, EyeRound, FinishedEyeRound } from "@/lib/eye";
import type { EyeTask } from "@/lib/eye-tasks";
import { database, isDuplicate } from "../client";
import { eyeAnswerColumn, eyeTaskColumn } from "../columns";
import type { EyeRoundModel, EyeTaskModel } from "../generated/client/models";

/** One task of a round as it stands, without its truth. */
export interface TaskStanding {
  readonly id: string;
  readonly number: number;
  /** Null before it is answered. */
  readonly result: EyeResult | null;
}

/** A task with its truth, and its round. */
export interface KeptEyeTask {
  readonly id: string;
  readonly number: number;
  readonly round: EyeRound;
  readonly task: EyeTask;
  /** Null before it is answered. */
  readonly answer: EyeAnswer | null;
}

export async function createEyeRound(round: EyeRound): Promise<void> {
  await database().eyeRound.create({ data: round });
}

/** A round with its tasks in their order; none before they are drawn. */
export async function readEyeRound(
  id: string,
): Promise<{ readonly round: EyeRound; readonly tasks: readonly TaskStanding[] } | null> {
  const row = await database().eyeRound.findUnique({
    where: { id },
    include: { tasks: { orderBy: { number: "asc" }, omit: { content: true, answer: true } } },
  });
  if (!row) return null;
  const { tasks, ...round } = row;
  return { round, tasks: tasks.map((task) => ({ ...task, result: task.answeredAt && resultOf(task) })) };
}

/** Stores the tasks of a round, the first with number 1, under ids that are given; where some are stored already, those stay. */
export async function storeEyeTasks(
  roundId: string,
  tasks: readonly { readonly id: string; readonly task: EyeTask }[],
): Promise<void> {
  try {
    await database().eyeTask.createMany({
      data: tasks.map(({ id, task }, n) => ({
        id,
        roundId,
        number: n + 1,
        kind: task.kind,
        content: eyeTaskColumn.write(task),
      })),
    });
  } catch (error) {
    if (!isDuplicate(error)) throw error;
  }
}

/** Tasks by their ids, with their truth. */
export async function readEyeTasks(ids: readonly string[]): Promise<ReadonlyMap<string, EyeTask>> {
  const rows = await database().eyeTask.findMany({
    where: { id: { in: [...ids] } },
    select: { id: true, content: true },
  });
  return new Map(rows.map(({ id, content }) => [id, eyeTaskColumn.read(content)]));
}

export async function readEyeTask(id: string): Promise<KeptEyeTask | null> {
  const row = await database().eyeTask.findUnique({ where: { id }, include: { round: true } });
  if (!row) return null;
  const { number, round, content, answer } = row;
  const task = eyeTaskColumn.read(content);
  return { id, number, round, task, answer: answer === null ? null : eyeAnswerColumn.read(answer) };
}

/** Keeps what a task was answered; false where it was answered before, which stands. */
export async function answerEyeTask(
  id: string,
  answer: EyeAnswer,
  { about, isRight, error }: Omit<EyeResult, "kind">,
  now: Date,
): Promise<boolean> {
  const { count } = await database().eyeTask.updateMany({
    where: { id, answeredAt: null },
    data: { answer: eyeAnswerColumn.write(answer), answeredAt: now, about, isRight, error },
  });
  return count === 1;
}

/** Ends a round that is not ended. */
export async function finishEyeRound(id: string, now: Date): Promise<void> {
  await database().eyeRound.updateMany({ where: { id, finishedAt: null }, data: { finishedAt: now } });
}

/** Its time is over when it is left. */
const timedBurst = { drill: "burst", isTimed: true } as const;

/**
 * Ends a burst whose time has run out, if it is not ended, and lets go of what was not answered of it, but for the first so many:
 * they are on the screen just now, and their answers are still told.
 */
export async function endBurst(id: string, now: Date, kept: number): Promise<void> {
  await finishEyeRound(id, now);
  const unanswered = await database().eyeTask.findMany({
    where: { roundId: id, answeredAt: null },
    orderBy: { number: "asc" },
    skip: kept,
    select: { id: true },
  });
  const ids = unanswered.map((task) => task.id);
  await database().eyeTask.deleteMany({ where: { id: { in: ids }, answeredAt: null } });
}

/**
 * Lets go of what somebody never answered of bursts that they began before a moment and left, and of such a burst altogether where
 * they answered nothing: nobody ends those.
 */
export async function dropLeftBursts(userId: string, before: Date): Promise<void> {
  const left = { userId, begunAt: { lt: before }, finishedAt: null, ...timedBurst };
  await database().eyeRound.deleteMany({ where: { ...left, tasks: { none: { answeredAt: { not: null } } } } });
  await database().eyeTask.deleteMany({ where: { answeredAt: null, round: left } });
}

/** When the last answer of a round was kept; null before the first. */
export async function readLastAnswer(roundId: string): Promise<Date | null> {
  const { _max } = await database().eyeTask.aggregate({ where: { roundId }, _max: { answeredAt: true } });
  return _max.answeredAt;
}

const answered = {
  where: { answeredAt: { not: null } },
  orderBy: { number: "asc" as const },
  omit: { content: true, answer: true },
};

/** The last finished rounds of somebody, or all of them, with what became of their tasks, the latest first. */
export async function listEyeRounds(userId: string, atMost?: number): Promise<readonly FinishedEyeRound[]> {
  const rows = await database().eyeRound.findMany({
    where: { userId, finishedAt: { not: null }, tasks: { some: { answeredAt: { not: null } } } },
    orderBy: [{ finishedAt: "desc" }, { id: "asc" }],
    take: atMost,
    include: { tasks: answered },
  });
  return rows.map(finishedOf);
}

/** The rounds that learners finished for drills that were set, the first of each first. */
export async function listRoundsFor(setDrillIds: readonly string[]): Promise<readonly FinishedEyeRound[]> {
  const rows = await database().eyeRound.findMany({
    where: {
      setDrillId: { in: [...setDrillIds] },
      finishedAt: { not: null },
      tasks: { some: { answeredAt: { not: null } } },
    },
    orderBy: [{ finishedAt: "asc" }, { id: "asc" }],
    include: { tasks: answered },
  });
  return rows.map(finishedOf);
}

/** A round for a drill that was set, which its learner has left and can go on with. A burst has run out meanwhile. */
export async function findRoundToGoOn(userId: string, setDrillId: string): Promise<string | null> {
  const row = await database().eyeRound.findFirst({
    where: { userId, setDrillId, finishedAt: null, NOT: timedBurst },
    orderBy: [{ begunAt: "desc" }, { id: "asc" }],
    select: { id: true },
  });
  return row?.id ?? null;
}

/** The newest round of somebody that is begun and not finished; null where there is none after `since`. */
export async function findUnfinishedRound(
  userId: string,
  since: Date,
): Promise<{ readonly round: EyeRound; readonly answered: number; readonly asked: number } | null> {
  const row = await database().eyeRound.findFirst({
    where: { userId, begunAt: { gt: since }, finishedAt: null, NOT: timedBurst },
    orderBy: [{ begunAt: "desc" }, { id: "asc" }],
    include: { tasks: { select: { answeredAt: true } } },
  });
  if (!row) return null;
  const { tasks, ...round } = row;
  return { round, asked: tasks.length, answered: tasks.filter(({ answeredAt }) => answeredAt !== null).length };
}

/** What somebody was shown in their latest tasks. */
export async function listLatelyShown(userId: string, atMost: number): Promise<readonly EyeTask["windows"][number][]> {
  const rows = await database().eyeTask.findMany({
    where: { round: { userId }, answeredAt: { not: null } },
    orderBy: { answeredAt: "desc" },
    take: atMost,
    select: { content: true },
  });
  return rows.flatMap(({ content }) => eyeTaskColumn.read(content).windows);
}

type FinishedRow = EyeRoundModel & { readonly tasks: readonly Omit<EyeTaskModel, "content" | "answer">[] };

function finishedOf({ tasks, finishedAt, ...round }: FinishedRow): FinishedEyeRound {
  if (!finishedAt) throw new Error(`round ${round.id} is not finished`);
  return { ...round, finishedAt, results: tasks.map(resultOf) };
}

const resultOf = ({ kind, about, isRight, error }: FinishedRow["tasks"][number]): EyeResult => ({
  kind,
  about: about as EyeResult["about"],
  isRight: isRight === true,
  error,
});
