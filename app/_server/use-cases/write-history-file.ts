import { PRACTICE } from "@/lib/printing";
import { readPerson } from "@/prisma/stores/people";
import type { Caller } from "../caller";
import { fileOf } from "../file-of";
import { requireFileKind, requireOpenBook, requireOwnLearner } from "../permissions";
import { practicesOf } from "../practices-of";
import { refuse } from "../refusal";
import { satOfLearner } from "../sat-of-learner";
import { workOf } from "../sittings/sat-sections";

/**
 * All marks of one person as a CSV file, practice and what they sat, the latest first: their own for anybody, in sittings once they
 * are released, and for a tutor those of their learners.
 */
export async function writeHistoryFile(caller: Caller, personId: string, kind: string) {
  const person = await requireOwnOrLearner(caller, personId);
  if (!person.ok) return person;
  const known = requireFileKind(kind);
  if (!known.ok) return known;
  const { learner } = person;
  const [{ handedIn }, sat] = await Promise.all([practicesOf(learner.id), satOfLearner(caller, learner.id)]);
  const pieces = [
    ...handedIn.map(({ id, handedInAt }) => ({ practiceId: id, at: Number(handedInAt), work: PRACTICE })),
    ...sat.map((one) => ({ practiceId: one.practiceId, at: one.closedAt.getTime(), work: workOf(one) })),
  ].sort((a, b) => b.at - a.at);
  const text = await fileOf(
    known.kind,
    pieces.map(({ practiceId, work }) => ({ practiceId, learner, work })),
  );
  return { ok: true, name: `${known.kind}-of-${learner.signInName}`, text } as const;
}

async function requireOwnOrLearner(caller: Caller, personId: string) {
  // what is told of sentences names limits and clauses
  const signedIn = await requireOpenBook(caller);
  if (!signedIn.ok) return signedIn;
  if (personId !== signedIn.actor.id) return requireOwnLearner(caller, personId);
  const learner = await readPerson(personId);
  return learner ? ({ ok: true, learner } as const) : refuse("no-such-learner");
}
