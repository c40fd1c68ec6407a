import { findTutor, replaceByOneTimeCodes } from "@/prisma/stores/people";
import type { Caller } from "../caller";
import { codesFor } from "../one-time-codes";
import { refuse } from "../refusal";

/** Who stands in the audit for whoever may run commands on the workshop's machine; no account has that id. */
export const OPERATOR = "operator";

/**
 * Puts a one-time code in place of the password of a tutor who has forgotten it, told this once, and signs them out everywhere.
 * For whoever may run commands on the workshop's machine, and so for no route: they can read the whole database anyway.
 */
export async function newCodeForTutor({ clock }: Pick<Caller, "clock">, signInName: string) {
  const tutor = await findTutor(signInName);
  if (!tutor) return refuse("no-such-tutor");
  const [{ kept, slip }] = await codesFor([tutor]);
  const at = clock();
  await replaceByOneTimeCodes([kept], at, {
    at,
    actorId: OPERATOR,
    act: "new-code",
    subject: { kind: "person", id: tutor.id },
    reason: null,
    details: {},
  });
  return { ok: true, slip } as const;
}
