import { packTrail } from "@/lib/trail";
import { readPerson } from "@/prisma/stores/people";
import { readHandedInPractice } from "@/prisma/stores/practices";
import { readRunPlace } from "@/prisma/stores/section-runs";
import { readViewTrail } from "@/prisma/stores/view-trails";
import type { Caller } from "../caller";
import { whyChosen } from "../next/why-chosen";
import { mayKnowMarks, requireOpenBook, requireReadablePractice } from "../permissions";
import { refuse } from "../refusal";
import { changeSitting, runStep } from "../sittings/change-sitting";

/**
 * A handed-in practice with truth and account: for whoever handed it in, in a sitting once they may know their marks, and for
 * their tutors. That a learner has seen them is noted, since a section whose answers are known is not opened again.
 */
export async function readMarkSheet(caller: Caller, id: string) {
  const readable = await requireReadablePractice(caller, id);
  if (!readable.ok) return readable;
  const { practice, isOwn } = readable;
  const { runId } = practice;
  const reader = await requireOpenBook(caller);
  if (!reader.ok) return reader;
  if (isOwn && runId !== null) {
    const now = caller.clock();
    const place = await readRunPlace(runId);
    if (!place) return refuse("no-such-practice");
    const { sittingId } = place;
    // the page of the sitting says when they come
    if (!(await mayKnowMarks(practice, now))) return refuse("marks-not-released", { sittingId });
    const seen = await changeSitting(sittingId, now, (whole) => runStep(whole, runId, { kind: "see-marks" }, now));
    if (!seen.ok) return seen;
  }
  const sheet = await readHandedInPractice(id);
  const learner = await readPerson(practice.userId);
  if (!sheet || !learner) return refuse("not-handed-in");
  const place = runId === null ? null : await readRunPlace(runId);
  const trail = await readViewTrail(id);
  return {
    ok: true,
    sheet,
    learner,
    isOwn,
    sittingId: place?.sittingId ?? null,
    /** Why this piece was chosen for the learner; null where it was not. */
    reason: await whyChosen(sheet),
    /** Where the learner looked; null where it was not recorded. */
    trail: trail && packTrail(trail),
  } as const;
}
