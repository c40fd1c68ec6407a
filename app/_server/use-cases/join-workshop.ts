import { newPersonSchema } from "@/lib/workshop";
import { enrol } from "@/prisma/stores/classes";
import { createPerson } from "@/prisma/stores/people";
import { countTry } from "@/prisma/stores/tries";
import { readWorkshop } from "@/prisma/stores/workshops";
import type { Caller } from "../caller";
import { problemsByField } from "../input-problem";
import { hashPassword } from "../passwords";
import { randomId } from "../random-id";
import { refuse } from "../refusal";
import { classOfCode } from "./join-class";

/** Accounts without a join code from one address until a minute without any; a code lets in as many as a class has. */
export const OWN_ACCOUNTS = 60;
const MINUTE_MS = 60_000;

/**
 * A learner makes their own account: into a class with its join code, or without one where the tutor allows it. A wrong
 * code makes no account.
 */
export async function joinWorkshop(
  { clock, address }: Pick<Caller, "clock" | "address">,
  input: { readonly joinCode?: string; readonly [field: string]: unknown },
) {
  const workshop = await readWorkshop();
  if (!workshop) return refuse("not-set-up");
  const joinCode = input.joinCode?.trim() ?? "";
  if (joinCode === "" && !workshop.allowsOwnAccounts) return refuse("own-accounts-off");
  const parsed = newPersonSchema.safeParse(input);
  if (!parsed.success) return refuse("invalid-input", { fields: problemsByField(parsed.error) });
  const found = joinCode === "" ? null : await classOfCode({ clock, address }, joinCode);
  if (found && !found.ok) return found;

  if (!found && (await countTry(`own-account|${address ?? "unknown"}`, clock(), MINUTE_MS)) > OWN_ACCOUNTS) {
    return refuse("too-many-accounts");
  }

  const { name, signInName, password } = parsed.data;
  const account = {
    id: randomId(),
    name,
    signInName,
    role: "learner",
    passwordHash: await hashPassword(password),
    hasOneTimeCode: false,
  } as const;
  const isMade = found
    ? await enrol({ groupId: found.group.id, accounts: [account], learnerIds: [] }, clock())
    : await createPerson(account, clock());
  return isMade ? ({ ok: true, signInName } as const) : refuse("sign-in-name-taken");
}
