import { asked } from "@/lib/questions";
import { whyShut } from "@/lib/sittings";
import { readQuestions } from "@/prisma/stores/report-saves";
import { readRunPlace } from "@/prisma/stores/section-runs";
import { readSitting } from "@/prisma/stores/sittings";
import { readTruth } from "@/prisma/stores/specimens";
import type { Caller } from "../caller";
import type { SpecimenSource } from "../generation/specimen-source";
import { factsOf } from "../joint-facts";
import { requireOpenBook } from "../permissions";
import { type Refusal, refuse } from "../refusal";
import type { BenchRun } from "../sitting-views";
import { byClock } from "../sittings/change-sitting";
import { sectionOf } from "../sittings/new-run";
import { liveRunOf } from "../sittings/own-view";
import { followProgress } from "./follow-progress";

/**
 * The caller's practice with how far its piece is, and what a drawing would say of the joint; that is null while the piece
 * is not made. Nothing else of the truth leaves. Once the report is closed the questions go with it, without their keys. A
 * section of a sitting comes with its clock, and not at all unless it is started and open.
 */
export async function openBench(caller: Caller, id: string, specimens: SpecimenSource) {
  const followed = await followProgress(caller, id, specimens);
  if (!followed.ok) return followed;
  const { runId, book } = followed.practice;
  if (runId === null && book === "open") {
    const reader = await requireOpenBook(caller);
    if (!reader.ok) return reader;
  }
  const sat = runId === null ? { ok: true as const, run: null } : await openRun(runId, caller.clock());
  if (!sat.ok) return sat;
  const made = followed.plate.state === "made" ? await readTruth(followed.practice.specimenId) : null;
  const questions = followed.practice.reportClosedAt ? (await readQuestions(id)).map(asked) : null;
  return { ...followed, questions, joint: made && factsOf(made.truth), run: sat.run };
}

async function openRun(runId: string, now: Date): Promise<{ readonly ok: true; readonly run: BenchRun } | Refusal> {
  const place = await readRunPlace(runId);
  const stored = place && (await readSitting(place.sittingId));
  const run = stored && byClock(stored, now).runs.find(({ id }) => id === runId);
  const live = stored && liveRunOf(stored, runId, now);
  if (!stored || !run || !live) return refuse("no-such-run");
  const shut = whyShut(run);
  // the page of the sitting says how the section stands
  if (shut !== null) return refuse(shut, { sittingId: stored.sitting.id });
  const { aids, questionCount } = sectionOf(stored.sitting.paper, run.section);
  return { ok: true, run: { ...live, aids, questionCount, now } };
}
