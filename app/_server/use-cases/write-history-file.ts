import { readPerson } from "@/prisma/stores/people";
import type { Caller } from "../caller";
import { fileOf } from "../file-of";
import { requireFileKind, requireSignedIn } from "../permissions";
import { practicesOf } from "../practices-of";
import { refuse } from "../refusal";

/** All marks of one person as a CSV file, the latest first: their own for anybody, those of a learner for a tutor. */
export async function writeHistoryFile(caller: Caller, personId: string, kind: string) {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  const isOwn = personId === signedIn.actor.id;
  const person = isOwn || signedIn.actor.role === "tutor" ? await readPerson(personId) : null;
  // another tutor's marks are their own
  if (!person || !(isOwn || person.role === "learner")) return refuse("no-such-learner");
  const known = requireFileKind(kind);
  if (!known.ok) return known;
  const { handedIn } = await practicesOf(person.id);
  const text = await fileOf(
    known.kind,
    handedIn.map(({ id }) => ({ practiceId: id, learner: person })),
  );
  return { ok: true, name: `${known.kind}-of-${person.signInName}`, text } as const;
}
