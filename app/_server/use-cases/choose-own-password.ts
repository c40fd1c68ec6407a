import { newPasswordSchema } from "@/lib/workshop";
import { readPasswordHash, replaceOneTimeCode } from "@/prisma/stores/people";
import type { Caller } from "../caller";
import { problemsByField } from "../input-problem";
import { hashPassword, isPassword } from "../passwords";
import { requireOneTimeCode } from "../permissions";
import { refuse } from "../refusal";

/** Somebody who signed in with a one-time code chooses a password of their own; the code works no more. */
export async function chooseOwnPassword(caller: Caller, input: unknown) {
  const waiting = requireOneTimeCode(caller);
  if (!waiting.ok) return waiting;
  const parsed = newPasswordSchema.safeParse(input);
  if (!parsed.success) return refuse("invalid-input", { fields: problemsByField(parsed.error) });
  const { id } = waiting.actor;
  const { password } = parsed.data;
  const present = await readPasswordHash(id);
  if (present !== null && (await isPassword(present, password))) return refuse("code-as-password");
  const chosen = { userId: id, passwordHash: await hashPassword(password) };
  await replaceOneTimeCode(chosen, caller.sessionId ?? null, caller.clock());
  return { ok: true } as const;
}
