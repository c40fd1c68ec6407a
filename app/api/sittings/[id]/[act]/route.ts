import type { Caller } from "@/app/_server/caller";
import { specimens } from "@/app/_server/generation";
import { answer, answerRefusal } from "@/app/_server/http/answer";
import { readJson } from "@/app/_server/http/read-json";
import type { Refusal } from "@/app/_server/refusal";
import { currentCaller } from "@/app/_server/session";
import {
  addTimeToAll,
  beginSitting,
  closeSitting,
  moveSitting,
  openSitting,
  pauseSitting,
  releaseSitting,
  renewPieces,
  resumeSitting,
  voidSitting,
} from "@/app/_server/use-cases/govern-sitting";

const MAX_BYTES = 2_000;

type Act = (caller: Caller, id: string, input: unknown) => Promise<({ readonly ok: true } & object) | Refusal>;

/** What a tutor does to a whole sitting; `void`, `add-time` and `move` take what they need as JSON. */
const ACTS: Readonly<Record<string, Act>> = {
  open: openSitting,
  begin: beginSitting,
  pause: pauseSitting,
  resume: resumeSitting,
  close: closeSitting,
  release: releaseSitting,
  move: moveSitting,
  void: voidSitting,
  "add-time": addTimeToAll,
  "renew-pieces": (caller, id) => renewPieces(caller, id, specimens),
};

export async function POST(request: Request, { params }: RouteContext<"/api/sittings/[id]/[act]">) {
  const { id, act } = await params;
  const run = Object.hasOwn(ACTS, act) ? ACTS[act] : null;
  if (!run) return new Response(null, { status: 404 });
  const read = await readJson(request, MAX_BYTES);
  if (!read.ok) return answerRefusal(read);
  const done = await run(await currentCaller(), id, read.body);
  return done.ok ? answer(done) : answerRefusal(done);
}
