import { groupCriteria } from "@/lib/criteria";
import { listCriteriaSets } from "@/prisma/stores/criteria-sets";
import type { Caller } from "../caller";
import { requireSignedIn } from "../permissions";

/** Criteria to choose from: the workshop's own that are in use, then the built-in ones by document. */
export async function listCriteria(caller: Caller) {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  const inUse = (await listCriteriaSets()).filter(({ archivedAt }) => archivedAt === null);
  return { ok: true, groups: groupCriteria(inUse.map(({ own }) => own)) } as const;
}
