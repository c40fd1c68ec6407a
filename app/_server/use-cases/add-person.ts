import { z } from "zod";
import { personNameSchema, signInNameSchema } from "@/lib/workshop";
import { createPerson } from "@/prisma/stores/people";
import type { Caller } from "../caller";
import { problemsByField } from "../input-problem";
import { accountWithCode } from "../one-time-codes";
import { requireTutor } from "../permissions";
import { refuse } from "../refusal";

const inputSchema = z.object({ name: personNameSchema, signInName: signInNameSchema });

/** The tutor makes an account for a learner; its one-time code is told now and never again. */
export async function addLearner(caller: Caller, input: unknown) {
  return addPerson(caller, input, "learner");
}

/** A tutor makes another tutor's account; its one-time code is told now and never again. */
export async function addTutor(caller: Caller, input: unknown) {
  return addPerson(caller, input, "tutor");
}

async function addPerson(caller: Caller, input: unknown, role: "tutor" | "learner") {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  const parsed = inputSchema.safeParse(input);
  if (!parsed.success) return refuse("invalid-input", { fields: problemsByField(parsed.error) });
  const { account, slip } = await accountWithCode({ ...parsed.data, role });
  if (!(await createPerson(account, caller.clock()))) return refuse("sign-in-name-taken");
  return { ok: true, slip } as const;
}
