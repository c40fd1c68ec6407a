import { listPractices } from "@/prisma/stores/practices";
import type { Caller } from "../caller";
import { requireSignedIn } from "../permissions";

/** The caller's practices: unfinished ones, and handed-in ones with their marks, the latest first. */
export async function listOwnPractices(caller: Caller) {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  const practices = await listPractices(signedIn.actor.id);
  return {
    ok: true,
    open: practices.filter(({ state }) => state === "open"),
    handedIn: practices
      .filter(({ state }) => state === "handed-in")
      .sort((a, b) => Number(b.handedInAt) - Number(a.handedInAt)),
  } as const;
}
