import { BUILT_IN_CRITERIA } from "@/lib/criteria";
import { listCriteriaSets } from "@/prisma/stores/criteria-sets";
import type { Caller } from "../caller";
import { requireSignedIn } from "../permissions";

/** A set of criteria by what people know it by. */
export interface CriteriaEntry {
  readonly id: string;
  readonly name: string;
  readonly edition: string;
  readonly origin: "in-house" | "built-in";
}

/** Sets that stand under one heading. */
export interface CriteriaGroup {
  readonly title: string;
  readonly sets: readonly CriteriaEntry[];
}

/** Criteria to choose from: the workshop's own that are in use, then the built-in ones by document. No group is empty. */
export async function listCriteria(caller: Caller) {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  const inUse = (await listCriteriaSets()).filter(({ archivedAt }) => archivedAt === null);
  const own = inUse.map(({ id, own: { name, edition } }): CriteriaEntry => ({ id, name, edition, origin: "in-house" }));
  const editions = [...new Set(BUILT_IN_CRITERIA.map(({ edition }) => edition))];
  const builtIn = editions.map(
    (title): CriteriaGroup => ({
      title,
      sets: BUILT_IN_CRITERIA.filter(({ edition }) => edition === title).map(
        ({ id, name, edition }): CriteriaEntry => ({ id, name, edition, origin: "built-in" }),
      ),
    }),
  );
  const groups: readonly CriteriaGroup[] = [...(own.length > 0 ? [{ title: "In-house", sets: own }] : []), ...builtIn];
  return { ok: true, groups } as const;
}
