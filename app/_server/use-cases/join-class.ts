import { z } from "zod";
import { type ClassGroup, joinCodeSchema } from "@/lib/classes";
import { enrol, findClassByJoinCode, listClassesWith } from "@/prisma/stores/classes";
import { countTry, forgetTry } from "@/prisma/stores/tries";
import type { Caller } from "../caller";
import { problemsByField } from "../input-problem";
import { requireSignedIn } from "../permissions";
import { refuse } from "../refusal";

const MINUTE_MS = 60_000;
/** Wrong join codes from one address until a minute without any; right ones do not count, since a class sits behind one. */
export const JOIN_CODE_TRIES = 20;

/** The class that a join code opens now. For other use cases. Wrong codes are counted by the caller's address. */
export async function classOfCode({ address, clock }: Pick<Caller, "address" | "clock">, typed: unknown) {
  const parsed = z.object({ joinCode: joinCodeSchema }).safeParse({ joinCode: typed });
  if (!parsed.success) return refuse("invalid-input", { fields: problemsByField(parsed.error) });
  const key = `join-code|${address ?? "unknown"}`;
  if ((await countTry(key, clock(), MINUTE_MS)) > JOIN_CODE_TRIES) return refuse("too-many-codes");
  const group = await findClassByJoinCode(parsed.data.joinCode);
  if (!group) return refuse("no-such-join-code");
  await forgetTry(key);
  return { ok: true, group } as const;
}

/** A learner who is signed in enters the class whose code they type; who is in it already stays as they are. */
export async function joinClass(caller: Caller, joinCode: unknown) {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  if (signedIn.actor.role !== "learner") return refuse("not-permitted");
  const found = await classOfCode(caller, joinCode);
  if (!found.ok) return found;
  await enrol({ groupId: found.group.id, accounts: [], learnerIds: [signedIn.actor.id] }, caller.clock());
  return { ok: true, name: found.group.name } as const;
}

/** The names of the classes in use that the caller is in. */
export async function listOwnClasses(caller: Caller) {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  const classes = await listClassesWith(signedIn.actor.id);
  return { ok: true, classes: classes.map(({ id, name, tutors }: ClassGroup) => ({ id, name, tutors })) } as const;
}
