import type { Person, SignInSlip } from "@/lib/workshop";
import type { AccountToCreate } from "@/prisma/stores/people";
import { hashPassword } from "./passwords";
import { randomId, randomPassword } from "./random-id";

/** A new account that waits for its owner with a one-time code. */
export async function accountWithCode({ name, signInName, role }: Pick<Person, "name" | "signInName" | "role">) {
  const code = randomPassword();
  const passwordHash = await hashPassword(code);
  const account: AccountToCreate = { id: randomId(), name, signInName, role, passwordHash, hasOneTimeCode: true };
  const slip: SignInSlip = { name, signInName, code };
  return { account, slip };
}

/** One-time codes for people with an account: what is kept, and what is told. */
export async function codesFor(people: readonly Person[]) {
  return Promise.all(
    people.map(async ({ id, name, signInName }) => {
      const code = randomPassword();
      const slip: SignInSlip = { name, signInName, code };
      return { kept: { userId: id, passwordHash: await hashPassword(code) }, slip };
    }),
  );
}
