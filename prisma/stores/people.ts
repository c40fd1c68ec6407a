import type { Person, Role } from "@/lib/workshop";
import { database, isDuplicate } from "../client";
import type { UserModel } from "../generated/client/models";

export interface AccountToCreate {
  readonly id: string;
  readonly name: string;
  readonly signInName: string;
  readonly role: Role;
  readonly passwordHash: string;
}

/** Nobody reads or writes mail here, but the sign-in library wants an address; `.invalid` is reserved for this. */
const addressOf = (account: Pick<AccountToCreate, "id">) => `${account.id}@toeline.invalid`;

/** The rows that make up accounts with a password. */
export function accountRows(accounts: readonly AccountToCreate[], now: Date) {
  return {
    users: accounts.map(({ id, name, signInName, role }) => ({
      id,
      name,
      role,
      username: signInName,
      displayUsername: signInName,
      email: addressOf({ id }),
      createdAt: now,
      updatedAt: now,
    })),
    credentials: accounts.map(({ id, passwordHash }) => ({
      id: `password-${id}`,
      accountId: id,
      providerId: "credential",
      userId: id,
      password: passwordHash,
      createdAt: now,
      updatedAt: now,
    })),
  };
}

/** Creates one account; false if the sign-in name is taken. */
export async function createPerson(account: AccountToCreate, now: Date): Promise<boolean> {
  const db = database();
  const rows = accountRows([account], now);
  try {
    await db.$transaction([
      db.user.createMany({ data: rows.users }),
      db.account.createMany({ data: rows.credentials }),
    ]);
    return true;
  } catch (error) {
    if (isDuplicate(error)) return false;
    throw error;
  }
}

export async function readPerson(id: string): Promise<Person | null> {
  const row = await database().user.findUnique({ where: { id } });
  return row && personOf(row);
}

/** Everybody with that role, by name. */
export async function listPeople(role: Role): Promise<readonly Person[]> {
  const rows = await database().user.findMany({ where: { role }, orderBy: [{ name: "asc" }, { id: "asc" }] });
  return rows.map(personOf);
}

/** Replaces a password and ends every session that was opened with the old one. */
export async function replacePassword(userId: string, passwordHash: string, now: Date): Promise<void> {
  const db = database();
  await db.$transaction([
    db.account.updateMany({
      where: { userId, providerId: "credential" },
      data: { password: passwordHash, updatedAt: now },
    }),
    db.session.deleteMany({ where: { userId } }),
  ]);
}

function personOf({ id, name, username, role, createdAt }: UserModel): Person {
  return { id, name, signInName: username, role, createdAt };
}
