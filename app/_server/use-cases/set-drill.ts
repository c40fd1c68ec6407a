import { setDrillSchema } from "@/lib/eye";
import { createSetDrill, withdrawSetDrill } from "@/prisma/stores/set-drills";
import type { Caller } from "../caller";
import { drillMaterial } from "../eye/stock";
import type { SpecimenSource } from "../generation/specimen-source";
import { problemsByField } from "../input-problem";
import { requireClassInUse } from "../permissions";
import { randomId } from "../random-id";
import { refuse } from "../refusal";

/** A tutor sets a class a drill: which, and which imperfections most of it is to be about. Its learners find it on Today. */
export async function setDrill(caller: Caller, classId: string, input: unknown, source: SpecimenSource) {
  const own = await requireClassInUse(caller, classId);
  if (!own.ok) return own;
  const parsed = setDrillSchema.safeParse(input);
  if (!parsed.success) return refuse("invalid-input", { fields: problemsByField(parsed.error) });
  const id = randomId();
  await createSetDrill({ ...parsed.data, id, groupId: classId, setById: own.actor.id }, caller.clock());
  // so that there is a piece with what it is about before the first learner begins
  await drillMaterial(parsed.data.types, source);
  return { ok: true, id } as const;
}

/** Takes it off everybody's Today; what was done of it stays. */
export async function withdrawDrill(caller: Caller, classId: string, id: string) {
  const own = await requireClassInUse(caller, classId);
  if (!own.ok) return own;
  return (await withdrawSetDrill(classId, id, caller.clock())) ? ({ ok: true } as const) : refuse("no-such-set-drill");
}
