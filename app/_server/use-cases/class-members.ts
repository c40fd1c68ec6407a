import { z } from "zod";
import { factorSchema } from "@/lib/sittings";
import { leaveClass, moveMember as storeMove, setTimeFactor as storeTimeFactor } from "@/prisma/stores/classes";
import type { Caller } from "../caller";
import { problemsByField } from "../input-problem";
import { requireClassInUse } from "../permissions";
import { refuse } from "../refusal";

/** Takes a learner out of a class; their account, reports and marks are kept. */
export async function removeMember(caller: Caller, classId: string, learnerId: string) {
  const own = await requireClassInUse(caller, classId);
  if (!own.ok) return own;
  const isGone = await leaveClass(classId, learnerId, caller.clock());
  return isGone ? ({ ok: true } as const) : refuse("no-such-learner");
}

/**
 * Moves a learner into another class of the same tutor, with their time factor. What they practise goes with them; what they
 * sat in sittings stays with the class that it was sat in.
 */
export async function moveMember(caller: Caller, classId: string, learnerId: string, targetId: string) {
  const from = await requireClassInUse(caller, classId);
  if (!from.ok) return from;
  const to = await requireClassInUse(caller, targetId);
  if (!to.ok) return to;
  const isThere = classId !== targetId && (await storeMove(learnerId, classId, targetId, caller.clock()));
  return isThere ? ({ ok: true, into: to.group.name } as const) : refuse("no-such-learner");
}

/** Sets what the time of a section is multiplied by for one learner of a class. */
export async function setTimeFactor(caller: Caller, classId: string, learnerId: string, timeFactor: unknown) {
  const own = await requireClassInUse(caller, classId);
  if (!own.ok) return own;
  const parsed = z.object({ timeFactor: factorSchema }).safeParse({ timeFactor });
  if (!parsed.success) return refuse("invalid-input", { fields: problemsByField(parsed.error) });
  const isSet = await storeTimeFactor(classId, learnerId, parsed.data.timeFactor);
  return isSet ? ({ ok: true } as const) : refuse("no-such-learner");
}
