import type { Caller } from "@/app/_server/caller";
import { answer, answerRefusal } from "@/app/_server/http/answer";
import { readJson } from "@/app/_server/http/read-json";
import type { Refusal } from "@/app/_server/refusal";
import { currentCaller } from "@/app/_server/session";
import { addTime, closeRun, pauseRun, reopenRun, resumeRun, voidRun } from "@/app/_server/use-cases/govern-run";
import { startSection, takeOver } from "@/app/_server/use-cases/start-section";

const MAX_BYTES = 2_000;

type Act = (caller: Caller, id: string, input: unknown) => Promise<({ readonly ok: true } & object) | Refusal>;

/** The first two are the learner's, answered with `{ now, run }`, see `LiveRun`; the others a tutor's. */
const ACTS: Readonly<Record<string, Act>> = {
  start: startSection,
  "take-over": takeOver,
  pause: pauseRun,
  resume: resumeRun,
  close: closeRun,
  "add-time": addTime,
  "re-open": reopenRun,
  void: voidRun,
};

export async function POST(request: Request, { params }: RouteContext<"/api/runs/[id]/[act]">) {
  const { id, act } = await params;
  const run = Object.hasOwn(ACTS, act) ? ACTS[act] : null;
  if (!run) return new Response(null, { status: 404 });
  const read = await readJson(request, MAX_BYTES);
  if (!read.ok) return answerRefusal(read);
  const done = await run(await currentCaller(), id, read.body);
  return done.ok ? answer(done) : answerRefusal(done);
}
