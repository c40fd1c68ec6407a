import { readErasureRequest, requestErasure, withdrawErasure } from "@/prisma/stores/erasure";
import type { Caller } from "../caller";
import { requireSignedIn } from "../permissions";
import { refuse } from "../refusal";

/** Whose record the caller may take along, and when they asked for it to be erased. */
export async function readOwnRecord(caller: Caller) {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  const { id, role } = signedIn.actor;
  return { ok: true, personId: id, role, askedAt: await readErasureRequest(id) } as const;
}

/** A learner asks for everything about them to be erased: their tutors see it, and do it. */
export async function askForErasure(caller: Caller) {
  const learner = requireLearner(caller);
  if (!learner.ok) return learner;
  await requestErasure(learner.actor.id, caller.clock());
  return { ok: true } as const;
}

/** Takes that back. */
export async function takeBackErasure(caller: Caller) {
  const learner = requireLearner(caller);
  if (!learner.ok) return learner;
  await withdrawErasure(learner.actor.id);
  return { ok: true } as const;
}

function requireLearner(caller: Caller) {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  return signedIn.actor.role === "learner" ? signedIn : refuse("not-permitted");
}
