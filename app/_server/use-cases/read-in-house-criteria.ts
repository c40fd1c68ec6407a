import { wholeCriteria } from "@/lib/criteria";
import { listCriteriaSets } from "@/prisma/stores/criteria-sets";
import type { Caller } from "../caller";
import { requireSignedIn } from "../permissions";

/** The workshop's own criteria that are in use, whole, for everybody who is signed in. */
export async function readInHouseCriteria(caller: Caller) {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  const inUse = (await listCriteriaSets()).filter(({ archivedAt }) => archivedAt === null);
  return { ok: true, criteria: inUse.map(wholeCriteria) } as const;
}
