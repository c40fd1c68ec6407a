import type { Caller } from "@/app/_server/caller";
import { answer, answerRefusal } from "@/app/_server/http/answer";
import { readJson } from "@/app/_server/http/read-json";
import type { Refusal } from "@/app/_server/refusal";
import { currentCaller } from "@/app/_server/session";
import { annulQuestion, previewAnnulment } from "@/app/_server/use-cases/annul-question";
import { markAgain, previewMarkAgain } from "@/app/_server/use-cases/mark-again";
import { overruleLine } from "@/app/_server/use-cases/overrule-line";
import { takeBackReview } from "@/app/_server/use-cases/take-back-review";

const MAX_BYTES = 4_000;

type Act = (caller: Caller, id: string, input: unknown) => Promise<({ readonly ok: true } & object) | Refusal>;

/** What a tutor says to the mark of a section; a preview changes nothing and tells what the act would do. */
const ACTS: Readonly<Record<string, Act>> = {
  overrule: overruleLine,
  "take-back": takeBackReview,
  "preview-annul": previewAnnulment,
  annul: annulQuestion,
  "preview-mark-again": previewMarkAgain,
  "mark-again": markAgain,
};

export async function POST(request: Request, { params }: RouteContext<"/api/runs/[id]/review/[act]">) {
  const { id, act } = await params;
  const run = Object.hasOwn(ACTS, act) ? ACTS[act] : null;
  if (!run) return new Response(null, { status: 404 });
  const read = await readJson(request, MAX_BYTES);
  if (!read.ok) return answerRefusal(read);
  const done = await run(await currentCaller(), id, read.body);
  return done.ok ? answer(done) : answerRefusal(done);
}
