import { z } from "zod";
import { personNameSchema, signInNameSchema } from "@/lib/workshop";
import { createPerson } from "@/prisma/stores/people";
import type { Caller } from "../caller";
import { problemsByField } from "../input-problem";
import { hashPassword } from "../passwords";
import { requireTutor } from "../permissions";
import { randomId, randomPassword } from "../random-id";
import { refuse } from "../refusal";

const inputSchema = z.object({ name: personNameSchema, signInName: signInNameSchema });

/** The tutor makes an account for a learner; its password is told this once. */
export async function addLearner(caller: Caller, input: unknown) {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  const parsed = inputSchema.safeParse(input);
  if (!parsed.success) return refuse("invalid-input", { fields: problemsByField(parsed.error) });
  const password = randomPassword();
  const account = {
    ...parsed.data,
    id: randomId(),
    role: "learner",
    passwordHash: await hashPassword(password),
  } as const;
  if (!(await createPerson(account, caller.clock()))) return refuse("sign-in-name-taken");
  return { ok: true, ...parsed.data, password } as const;
}
