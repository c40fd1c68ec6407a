import { wholeCriteria } from "@/lib/criteria";
import { listCriteriaSets } from "@/prisma/stores/criteria-sets";
import type { Caller } from "../caller";
import { requireOpenBook } from "../permissions";

/** The workshop's own criteria that are in use, whole, for everybody who may look at limits now. */
export async function readInHouseCriteria(caller: Caller) {
  const reader = await requireOpenBook(caller);
  if (!reader.ok) return reader;
  const inUse = (await listCriteriaSets()).filter(({ archivedAt }) => archivedAt === null);
  return { ok: true, criteria: inUse.map(wholeCriteria) } as const;
}
