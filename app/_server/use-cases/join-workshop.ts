import { newPersonSchema } from "@/lib/workshop";
import { createPerson } from "@/prisma/stores/people";
import { readWorkshop } from "@/prisma/stores/workshops";
import type { Caller } from "../caller";
import { problemsByField } from "../input-problem";
import { hashPassword } from "../passwords";
import { randomId } from "../random-id";
import { refuse } from "../refusal";

/** A learner makes their own account, where the tutor allows it. */
export async function joinWorkshop({ clock }: Pick<Caller, "clock">, input: unknown) {
  const workshop = await readWorkshop();
  if (!workshop) return refuse("not-set-up");
  if (!workshop.allowsOwnAccounts) return refuse("own-accounts-off");
  const parsed = newPersonSchema.safeParse(input);
  if (!parsed.success) return refuse("invalid-input", { fields: problemsByField(parsed.error) });
  const { name, signInName, password } = parsed.data;
  const account = {
    id: randomId(),
    name,
    signInName,
    role: "learner",
    passwordHash: await hashPassword(password),
  } as const;
  if (!(await createPerson(account, clock()))) return refuse("sign-in-name-taken");
  return { ok: true, signInName } as const;
}
