import { endSession, endSessions, listSessions } from "@/prisma/stores/sessions";
import type { Caller } from "../caller";
import { requireSignedIn } from "../permissions";
import { refuse } from "../refusal";

/** Where the caller is signed in, the latest first. */
export async function listOwnSessions(caller: Caller) {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  const sessions = await listSessions(signedIn.actor.id, caller.clock());
  return {
    ok: true,
    sessions: sessions.map((session) => ({ ...session, isThisOne: session.id === caller.sessionId })),
  } as const;
}

/** Signs the caller out on one device, or with null on all but the one they ask from. */
export async function endOwnSessions(caller: Caller, id: string | null) {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  if (id === null) {
    await endSessions(signedIn.actor.id, caller.sessionId ?? null);
    return { ok: true } as const;
  }
  return (await endSession(signedIn.actor.id, id)) ? ({ ok: true } as const) : refuse("no-such-session");
}
