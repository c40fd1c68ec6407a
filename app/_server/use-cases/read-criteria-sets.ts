import { listCriteriaSets, readCriteriaSet } from "@/prisma/stores/criteria-sets";
import type { Caller } from "../caller";
import { requireTutor } from "../permissions";
import { refuse } from "../refusal";

/** Every set of the workshop's own, for its tutors; also those that are put away. */
export async function readCriteriaSets(caller: Caller) {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  return { ok: true, sets: await listCriteriaSets() } as const;
}

/** One of them, to change it. */
export async function readOwnCriteria(caller: Caller, id: string) {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  const set = await readCriteriaSet(id);
  return set ? ({ ok: true, set } as const) : refuse("no-such-criteria");
}
