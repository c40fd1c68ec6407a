import {
  type AskedTask,
  allowed,
  END_ALLOWANCE,
  ESTIMATE_ALLOWANCES,
  type EyeAnswer,
  type EyeResult,
  type ToldTask,
} from "../eye";
import { type Mm, roundTo } from "../math";
import { type EyeTask, type Thing, targetOf } from "./task";

/** A task as its learner gets it before the answer. */
export function askedOf(task: EyeTask, id: string, number: number): AskedTask {
  const { kind, windows, options, estimate } = task;
  const target = targetOf(task)?.thing;
  // to name it, or to say whether it is there, is the question itself
  const isNamed = kind === "ends" || kind === "size" || kind === "pair";
  return {
    id,
    number,
    kind,
    windows: windows.map(({ at: { face, length, width } }) => ({ face, length, width })),
    type: isNamed && target?.what === "imperfection" ? target.name : null,
    options,
    estimate,
  };
}

/** Whether an answer answers what a task asks. */
export const isAnswerTo = (task: EyeTask, answer: EyeAnswer): boolean => task.kind === answer.kind;

/** What an answer comes to, and all that may be told with it. Throws on an answer to another kind of task. */
export function judge(task: EyeTask, answer: EyeAnswer): ToldTask {
  return {
    ...verdictOf(task, answer),
    answer,
    things: task.windows.flatMap(({ things }, window) =>
      things.map(({ what, name, outline, from, to, isTarget }) => ({
        window,
        what,
        name,
        outline,
        from,
        to,
        isTarget,
      })),
    ),
  };
}

/** What is added up of it. */
export function resultOf(task: EyeTask, told: ToldTask): EyeResult {
  return { kind: task.kind, about: aboutOf(task), isRight: told.isRight, error: told.error };
}

/** What its windows have that it could be about: its target, else clutter that lies there; nothing where what is there is sound. */
function aboutOf(task: EyeTask): EyeResult["about"] {
  const target = targetOf(task)?.thing;
  if (target) return target.what === "neutral" ? null : target.name;
  return task.windows[0].things.find(({ what }) => what === "clutter")?.name ?? null;
}

type Verdict = Pick<ToldTask, "isRight" | "right" | "error" | "allowed">;
const unmeasured = (isRight: boolean, right: EyeAnswer): Verdict => ({ isRight, right, error: null, allowed: null });

function verdictOf(task: EyeTask, answer: EyeAnswer): Verdict {
  const target = targetOf(task);
  if (task.kind === "spot" && answer.kind === "spot") {
    const isThere = target?.thing.what === "imperfection";
    return unmeasured(answer.isThere === isThere, { kind: "spot", isThere });
  }
  if (target?.thing.what !== "imperfection") throw new Error(`a task of kind ${task.kind} without a target`);
  const { window, thing } = target;
  if (task.kind === "name" && answer.kind === "name") {
    return unmeasured(answer.type === thing.name, { kind: "name", type: thing.name });
  }
  if (task.kind === "pair" && answer.kind === "pair") {
    return unmeasured(answer.window === window, { kind: "pair", window });
  }
  if (task.kind === "ends" && answer.kind === "ends") return judgeEnds(thing, answer);
  if (task.kind === "size" && answer.kind === "size") return judgeSize(task, thing, answer.value);
  throw new Error(`an answer of kind ${answer.kind} to a task of kind ${task.kind}`);
}

/** Both ends have to be in place; the error is that of the end which is further off. */
function judgeEnds(thing: Thing, answer: { readonly from: Mm; readonly to: Mm }): Verdict {
  const [from, to] = [shown(thing.from), shown(thing.to)];
  const beyond = [from - answer.from, answer.to - to];
  const worst = Math.abs(beyond[0]) >= Math.abs(beyond[1]) ? beyond[0] : beyond[1];
  return measured(worst, allowed(END_ALLOWANCE, to - from), { kind: "ends", from, to });
}

function judgeSize({ estimate }: EyeTask, thing: Thing, answer: Mm): Verdict {
  if (estimate === null) throw new Error("an estimate of nothing");
  const value = shown(sizeOf(thing, estimate));
  return measured(answer - value, allowed(ESTIMATE_ALLOWANCES[estimate], value), { kind: "size", value });
}

function sizeOf(thing: Thing, estimate: NonNullable<EyeTask["estimate"]>): Mm {
  if (estimate === "length") return thing.to - thing.from;
  if (thing.what !== "imperfection" || thing.size === null) throw new Error(`${thing.name} has no size`);
  return thing.size;
}

/** Judged as it is shown, to a tenth of a millimetre, so that nobody is off by what no screen tells. */
const shown = (mm: Mm): Mm => roundTo(mm, 0.1);

function measured(error: Mm, most: Mm, right: EyeAnswer): Verdict {
  return { isRight: shown(Math.abs(error)) <= shown(most), right, error: shown(error), allowed: shown(most) };
}
