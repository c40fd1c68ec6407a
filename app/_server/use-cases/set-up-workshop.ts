import { z } from "zod";
import { DEFAULT_PASS_MARKS, newPersonSchema, workshopNameSchema } from "@/lib/workshop";
import { createWorkshop } from "@/prisma/stores/workshops";
import type { Caller } from "../caller";
import { problemsByField } from "../input-problem";
import { hashPassword } from "../passwords";
import { randomId } from "../random-id";
import { refuse } from "../refusal";

const inputSchema = z.intersection(z.object({ workshop: workshopNameSchema }), newPersonSchema);

/** First start: names the workshop and makes the tutor's account. Anybody may, once. */
export async function setUpWorkshop({ clock }: Pick<Caller, "clock">, input: unknown) {
  const parsed = inputSchema.safeParse(input);
  if (!parsed.success) return refuse("invalid-input", { fields: problemsByField(parsed.error) });
  const { workshop, name, signInName, password } = parsed.data;
  const tutor = {
    id: randomId(),
    name,
    signInName,
    role: "tutor",
    hasOneTimeCode: false,
    passwordHash: await hashPassword(password),
  } as const;
  const settings = { name: workshop, allowsOwnAccounts: true, passMarks: DEFAULT_PASS_MARKS };
  if (!(await createWorkshop(settings, [tutor], clock()))) return refuse("already-set-up");
  return { ok: true, signInName } as const;
}
