import type { ClassGroup } from "@/lib/classes";
import type { EyeRound } from "@/lib/eye";
import type { Practice } from "@/lib/practice";
import { FILE_KINDS, type FileKind } from "@/lib/printing";
import { mayShowMarks, type SectionRun, type Sitting, whyShut } from "@/lib/sittings";
import type { Person } from "@/lib/workshop";
import { readClassOf } from "@/prisma/stores/classes";
import { type KeptEyeTask, readEyeRound, readEyeTask, type TaskStanding } from "@/prisma/stores/eye-rounds";
import { readLearnerOf } from "@/prisma/stores/people";
import { readPractice } from "@/prisma/stores/practices";
import { readRunPlace } from "@/prisma/stores/section-runs";
import { readGroupOfSitting, readSitting } from "@/prisma/stores/sittings";
import type { Actor, Caller } from "./caller";
import { type Refusal, refuse } from "./refusal";
import { byClock } from "./sittings/change-sitting";
import { closedBookOf } from "./sittings/closed-book";

type Permitted<Value> = ({ readonly ok: true } & Value) | Refusal;

/** Somebody who is signed in with a password of their own: a one-time code opens nothing but the choice of one. */
export function requireSignedIn({ actor }: Caller): Permitted<{ actor: Actor }> {
  if (!actor) return refuse("not-signed-in");
  return actor.hasOneTimeCode ? refuse("own-password-needed") : { ok: true, actor };
}

/** Somebody who has yet to choose a password of their own. */
export function requireOneTimeCode({ actor }: Caller): Permitted<{ actor: Actor }> {
  if (!actor) return refuse("not-signed-in");
  return actor.hasOneTimeCode ? { ok: true, actor } : refuse("not-permitted");
}

/**
 * Somebody who may look at limits now: anybody but a learner who has a section with a closed book open. Every way to the
 * table of some criteria, or to what is worked out by it, asks this.
 */
export async function requireOpenBook(caller: Caller): Promise<Permitted<{ actor: Actor }>> {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok || signedIn.actor.role === "tutor") return signedIn;
  return (await closedBookOf(signedIn.actor.id, caller.clock())) === null ? signedIn : refuse("book-closed");
}

export function requireTutor(caller: Caller): Permitted<{ actor: Actor }> {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  return signedIn.actor.role === "tutor" ? signedIn : refuse("not-permitted");
}

/** A class that the caller is a tutor of. Another tutor's is refused exactly like one that does not exist. */
export async function requireOwnClass(
  caller: Caller,
  id: string,
): Promise<Permitted<{ actor: Actor; group: ClassGroup }>> {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  const group = await readClassOf(tutor.actor.id, id);
  return group ? { ok: true, actor: tutor.actor, group } : refuse("no-such-class");
}

/** The same, and in use: an archived class is only read. */
export async function requireClassInUse(
  caller: Caller,
  id: string,
): Promise<Permitted<{ actor: Actor; group: ClassGroup }>> {
  const own = await requireOwnClass(caller, id);
  return own.ok && own.group.archivedAt ? refuse("class-archived") : own;
}

/**
 * A learner that the calling tutor works with: in a class of theirs, or in no class at all. Another class's learner is
 * refused exactly like one who does not exist.
 */
export async function requireOwnLearner(
  caller: Caller,
  id: string,
): Promise<Permitted<{ actor: Actor; learner: Person }>> {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  const learner = await readLearnerOf(tutor.actor.id, id);
  return learner ? { ok: true, actor: tutor.actor, learner } : refuse("no-such-learner");
}

/** The caller's own practice. Somebody else's is refused exactly like one that does not exist. */
export async function requireOwnPractice(caller: Caller, id: string): Promise<Permitted<{ practice: Practice }>> {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  const practice = await readPractice(id);
  if (!practice || practice.userId !== signedIn.actor.id) return refuse("no-such-practice");
  return { ok: true, practice };
}

/** A practice of the caller's own, or for a tutor one of a learner they work with. */
export async function requireReadablePractice(
  caller: Caller,
  id: string,
): Promise<Permitted<{ practice: Practice; isOwn: boolean }>> {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  const practice = await readPractice(id);
  if (!practice) return refuse("no-such-practice");
  const { actor } = signedIn;
  if (practice.userId === actor.id) return { ok: true, practice, isOwn: true };
  const isTheirs = actor.role === "tutor" && (await isOfTutor(caller, practice, actor));
  return isTheirs ? { ok: true, practice, isOwn: false } : refuse("no-such-practice");
}

/** For practice: that of a learner they work with; a section of a sitting: of a class of theirs. */
async function isOfTutor(caller: Caller, { runId, userId }: Practice, actor: Actor): Promise<boolean> {
  if (runId === null) return (await readLearnerOf(actor.id, userId)) !== null;
  return (await requireRunOfClass(caller, runId)).ok;
}

/** A sitting of a class that the caller is a tutor of. Another one is refused exactly like one that does not exist. */
export async function requireOwnSitting(
  caller: Caller,
  id: string,
): Promise<Permitted<{ actor: Actor; group: ClassGroup }>> {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  const groupId = await readGroupOfSitting(id);
  const group = groupId && (await readClassOf(tutor.actor.id, groupId));
  return group ? { ok: true, actor: tutor.actor, group } : refuse("no-such-sitting");
}

/** A section in a sitting of a class that the caller is a tutor of. */
export async function requireRunOfClass(
  caller: Caller,
  runId: string,
): Promise<Permitted<{ actor: Actor; sittingId: string }>> {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  const place = await readRunPlace(runId);
  if (!place || !(await requireOwnSitting(caller, place.sittingId)).ok) return refuse("no-such-run");
  return { ok: true, actor: tutor.actor, sittingId: place.sittingId };
}

/** A section that the caller sits. Somebody else's is refused exactly like one that does not exist. */
export async function requireOwnRun(
  caller: Caller,
  runId: string,
): Promise<Permitted<{ actor: Actor; sittingId: string }>> {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  const place = await readRunPlace(runId);
  if (place?.userId !== signedIn.actor.id) return refuse("no-such-run");
  return { ok: true, actor: signedIn.actor, sittingId: place.sittingId };
}

/** A practice whose piece the caller may look at: their own, and for a tutor what their learners have handed in. */
export async function requireVisiblePiece(caller: Caller, id: string): Promise<Permitted<{ practice: Practice }>> {
  const readable = await requireReadablePractice(caller, id);
  if (!readable.ok) return readable;
  const { practice, isOwn } = readable;
  if (!isOwn) return practice.state === "handed-in" ? readable : refuse("no-such-practice");
  const refusal = await whyCovered(practice, caller.clock());
  return refusal ?? readable;
}

/**
 * Why a learner may not look at the piece of a section of a sitting just now: before its clock goes, and from when it is
 * closed until they may know their marks. Null where they may.
 */
async function whyCovered(practice: Practice, now: Date): Promise<Refusal | null> {
  if (practice.runId === null) return null;
  const found = await runOf(practice.runId, now);
  if (!found) return refuse("no-such-practice");
  const shut = whyShut(found.run);
  return shut === null || mayShowMarks(found.run, found.sitting, now) ? null : refuse(shut);
}

/**
 * Whether a learner may know marks and truth of a practice of theirs: for practice once it is handed in, in a sitting as
 * its paper has it. Every way to marks asks this.
 */
export async function mayKnowMarks({ runId, state }: Practice, now: Date): Promise<boolean> {
  if (runId === null) return state === "handed-in";
  const found = await runOf(runId, now);
  return found !== null && mayShowMarks(found.run, found.sitting, now);
}

async function runOf(runId: string, now: Date): Promise<{ run: SectionRun; sitting: Sitting } | null> {
  const place = await readRunPlace(runId);
  const stored = place && (await readSitting(place.sittingId));
  const whole = stored && byClock(stored, now);
  const run = whole?.runs.find(({ id }) => id === runId);
  return whole && run ? { run, sitting: whole.sitting } : null;
}

/** A round of the caller's own, unless a section with a closed book is open. Somebody else's is as one that does not exist. */
export async function requireOwnEyeRound(
  caller: Caller,
  id: string,
): Promise<Permitted<{ actor: Actor; round: EyeRound; tasks: readonly TaskStanding[] }>> {
  const open = await requireOpenBook(caller);
  if (!open.ok) return open;
  const kept = await readEyeRound(id);
  return kept?.round.userId === open.actor.id ? { ok: true, actor: open.actor, ...kept } : refuse("no-such-eye-round");
}

/** The same of a task; it holds truth. */
export async function requireOwnEyeTask(caller: Caller, id: string): Promise<Permitted<{ kept: KeptEyeTask }>> {
  const open = await requireOpenBook(caller);
  if (!open.ok) return open;
  const kept = await readEyeTask(id);
  return kept?.round.userId === open.actor.id ? { ok: true, kept } : refuse("no-such-eye-task");
}

/** The kind of CSV file that an address names. */
export function requireFileKind(kind: string): Permitted<{ kind: FileKind }> {
  const known = FILE_KINDS.find((one) => one === kind);
  return known ? { ok: true, kind: known } : refuse("no-such-file");
}
