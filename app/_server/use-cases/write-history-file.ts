import { readPerson } from "@/prisma/stores/people";
import type { Caller } from "../caller";
import { fileOf } from "../file-of";
import { requireFileKind, requireOwnLearner, requireSignedIn } from "../permissions";
import { practicesOf } from "../practices-of";
import { refuse } from "../refusal";

/** All marks of one person outside sittings as a CSV file, the latest first: their own for anybody, those of their learners for a tutor. */
export async function writeHistoryFile(caller: Caller, personId: string, kind: string) {
  const person = await requireOwnOrLearner(caller, personId);
  if (!person.ok) return person;
  const known = requireFileKind(kind);
  if (!known.ok) return known;
  const { learner } = person;
  const { handedIn } = await practicesOf(learner.id);
  const text = await fileOf(
    known.kind,
    handedIn.map(({ id }) => ({ practiceId: id, learner })),
  );
  return { ok: true, name: `${known.kind}-of-${learner.signInName}`, text } as const;
}

async function requireOwnOrLearner(caller: Caller, personId: string) {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  if (personId !== signedIn.actor.id) return requireOwnLearner(caller, personId);
  const learner = await readPerson(personId);
  return learner ? ({ ok: true, learner } as const) : refuse("no-such-learner");
}
