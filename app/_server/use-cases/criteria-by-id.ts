import { builtInCriteria, type Criteria, wholeCriteria } from "@/lib/criteria";
import { readCriteriaSet } from "@/prisma/stores/criteria-sets";

/**
 * Built-in or in-house criteria, whole, as they stand now; null where none have that id. For other use cases, which have
 * asked who calls. Sets that are put away are found as well.
 */
export async function criteriaById(id: string): Promise<Criteria | null> {
  const builtIn = builtInCriteria(id);
  if (builtIn) return builtIn;
  const set = await readCriteriaSet(id);
  return set && wholeCriteria(set);
}
