import { workshopSettingsSchema } from "@/lib/workshop";
import { readWorkshop, updateWorkshop } from "@/prisma/stores/workshops";
import type { Caller } from "../caller";
import { problemsByField } from "../input-problem";
import { requireTutor } from "../permissions";
import { refuse } from "../refusal";

/** The tutor changes the workshop's name, who may make accounts, and the pass marks offered. Old marks stay as they are. */
export async function changeWorkshopSettings(caller: Caller, input: unknown) {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  const parsed = workshopSettingsSchema.safeParse(input);
  if (!parsed.success) return refuse("invalid-input", { fields: problemsByField(parsed.error) });
  if (!(await readWorkshop())) return refuse("not-set-up");
  await updateWorkshop(parsed.data);
  return { ok: true } as const;
}
