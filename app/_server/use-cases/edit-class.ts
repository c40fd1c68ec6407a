import { classDetailsSchema } from "@/lib/classes";
import { createClass, setJoinCode, archiveClass as storeArchived, updateClass } from "@/prisma/stores/classes";
import type { Caller } from "../caller";
import { problemsByField } from "../input-problem";
import { requireClassInUse, requireOwnClass, requireTutor } from "../permissions";
import { randomId, randomJoinCode } from "../random-id";
import { refuse } from "../refusal";

/** A tutor makes a class, without members; answered with its id. */
export async function makeClass(caller: Caller, input: unknown) {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  const parsed = classDetailsSchema.safeParse(input);
  if (!parsed.success) return refuse("invalid-input", { fields: problemsByField(parsed.error) });
  const id = randomId();
  await createClass({ ...parsed.data, id }, tutor.actor.id, caller.clock());
  return { ok: true, id } as const;
}

/** Renames a class and keeps what tutors note about it. */
export async function changeClass(caller: Caller, id: string, input: unknown) {
  const own = await requireClassInUse(caller, id);
  if (!own.ok) return own;
  const parsed = classDetailsSchema.safeParse(input);
  if (!parsed.success) return refuse("invalid-input", { fields: problemsByField(parsed.error) });
  await updateClass(id, parsed.data);
  return { ok: true } as const;
}

/** Archives a class, or takes it back into use. Members, their work and its history stay. */
export async function archiveClass(caller: Caller, id: string, isArchived: boolean) {
  const own = await requireOwnClass(caller, id);
  if (!own.ok) return own;
  const isNow = own.group.archivedAt !== null;
  if (isNow !== isArchived) await storeArchived(id, isArchived ? caller.clock() : null);
  return { ok: true } as const;
}

/** Gives a class a new join code, after which the one before opens nothing, or switches it off. */
export async function changeJoinCode(caller: Caller, id: string, isOn: boolean) {
  const own = await requireClassInUse(caller, id);
  if (!own.ok) return own;
  // codes are unique: another draw where one is in use already
  while (!(await setJoinCode(id, isOn ? randomJoinCode() : null)));
  return { ok: true } as const;
}
