import { answer, answerRefusal } from "@/app/_server/http/answer";
import { readJson } from "@/app/_server/http/read-json";
import { currentCaller } from "@/app/_server/session";
import { keepDrillRound } from "@/app/_server/use-cases/keep-drill-round";

const MAX_BYTES = 2_000;

/** Keeps a finished round of a gauge drill: `{ drill, gauges, asked, right, medianError, seconds }`, answered with its id. */
export async function POST(request: Request): Promise<Response> {
  const read = await readJson(request, MAX_BYTES);
  if (!read.ok) return answerRefusal(read);
  const kept = await keepDrillRound(await currentCaller(), read.body);
  return kept.ok ? answer({ ok: true, id: kept.round.id }, 201) : answerRefusal(kept);
}
