import { createCriteriaSet } from "@/prisma/stores/criteria-sets";
import type { Caller } from "../caller";
import { checkCriteria } from "../check-criteria";
import { requireTutor } from "../permissions";
import { randomCriteriaId } from "../random-id";

/** A tutor adds criteria of the workshop's own: `{ basedOn, own }`. Their id is made here, whatever was sent. */
export async function addCriteria(caller: Caller, input: unknown) {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  const checked = checkCriteria(input, randomCriteriaId());
  if (!checked.ok) return checked;
  const { basedOn, own } = checked;
  const createdAt = caller.clock();
  await createCriteriaSet({ basedOn, own, ownerId: tutor.actor.id, createdAt });
  return { ok: true, id: own.id, updatedAt: createdAt } as const;
}
