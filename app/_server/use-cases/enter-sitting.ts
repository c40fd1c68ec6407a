import { listMembers } from "@/prisma/stores/classes";
import { readPaperVersion } from "@/prisma/stores/papers";
import { notePresence } from "@/prisma/stores/presences";
import { readSitting, type StoredSitting } from "@/prisma/stores/sittings";
import type { Caller } from "../caller";
import type { SpecimenSource } from "../generation/specimen-source";
import { requireSignedIn } from "../permissions";
import { refuse } from "../refusal";
import { byClock, changeSitting, sittingStep } from "../sittings/change-sitting";
import { orderPiece, runOn } from "../sittings/new-run";
import { ownView, pieceOf } from "../sittings/own-view";
import { renewFailed } from "../sittings/renew-failed";

/**
 * A learner comes into a sitting: notes that they are there, takes them in if they joined the class after it was planned,
 * and hurries what they wait for. Answered with the sitting as they may know it; doing it again is how a page stays up to
 * date.
 */
export async function enterSitting(caller: Caller, id: string, specimens: SpecimenSource) {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  const { id: userId } = signedIn.actor;
  const now = caller.clock();
  let stored = await readSitting(id);
  if (!stored) return refuse("no-such-sitting");
  if (!stored.runs.some(({ run }) => run.userId === userId)) {
    const member = (await listMembers(stored.groupId)).find(
      ({ person, leftAt }) => person.id === userId && leftAt === null,
    );
    // whoever has no business with it learns nothing of it
    if (!member || signedIn.actor.role !== "learner") return refuse("no-such-sitting");
    const { state } = byClock(stored, now).sitting;
    if (!stored.isForWholeClass || !TAKES_IN.includes(state)) return refuse("not-expected");
    if (state !== "planned") await takeIn(stored, { userId, factor: member.timeFactor }, now, specimens);
  }
  await notePresence(id, userId, now);
  stored = (await readSitting(id)) ?? stored;
  await hurryPieces(stored, userId, specimens);
  return { ok: true, now, sitting: ownView(stored, userId, now) } as const;
}

const TAKES_IN: readonly string[] = ["planned", "open", "running", "paused"];

/** Adds the sections of somebody who was not expected, on pieces that are made while they wait. */
async function takeIn(
  stored: StoredSitting,
  { userId, factor }: { readonly userId: string; readonly factor: number },
  now: Date,
  specimens: SpecimenSource,
): Promise<void> {
  const version = await readPaperVersion(stored.paperVersionId);
  if (!version) return;
  const { paper } = version;
  for (const { section } of paper.sections) {
    const same = paper.forms === "same" && stored.runs.find(({ run }) => run.section === section && !run.isBorderline);
    const specimenId = same ? same.specimenId : await orderPiece(paper, section, specimens, true);
    const fresh = runOn({ userId, section, factor, isBorderline: false }, version, specimenId, now);
    // refused where a second window did the same just now
    await changeSitting(stored.sitting.id, now, (whole) => ({
      ...sittingStep(whole, { kind: "add-run", run: fresh.run }, now),
      newRuns: [fresh],
    }));
  }
}

/** Once the sitting is on, whoever is there waits for their pieces; those that could not be made are ordered anew. */
async function hurryPieces(stored: StoredSitting, userId: string, specimens: SpecimenSource): Promise<void> {
  if (stored.sitting.state !== "running") return;
  const own = stored.runs.filter(({ run }) => run.userId === userId && run.state === "waiting");
  for (const one of own) if (pieceOf(one) === "making") await specimens.hurry(one.specimenId);
  await renewFailed(stored, own, specimens, true);
}
