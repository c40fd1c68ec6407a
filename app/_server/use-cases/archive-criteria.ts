import { archiveCriteriaSet } from "@/prisma/stores/criteria-sets";
import type { Caller } from "../caller";
import { requireTutor } from "../permissions";
import { refuse } from "../refusal";

/** A tutor puts criteria away, so that nobody can choose them any more, or takes them back. Nothing of them is lost. */
export async function archiveCriteria(caller: Caller, id: string, isArchived: boolean) {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  const isDone = await archiveCriteriaSet(id, isArchived ? caller.clock() : null);
  return isDone ? ({ ok: true } as const) : refuse("no-such-criteria");
}
