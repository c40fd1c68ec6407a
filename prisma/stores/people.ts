import { byName, type Person, type Role } from "@/lib/workshop";
import { database, isDuplicate } from "../client";
import type { UserModel } from "../generated/client/models";
import { type AuditEntry, auditRow } from "./audit";

export interface AccountToCreate {
  readonly id: string;
  readonly name: string;
  readonly signInName: string;
  readonly role: Role;
  readonly passwordHash: string;
  /** The password is a code that was given out, to be replaced by one of their own. */
  readonly hasOneTimeCode: boolean;
}

/** Nobody reads or writes mail here, but the sign-in library wants an address; `.invalid` is reserved for this. */
const addressOf = (account: Pick<AccountToCreate, "id">) => `${account.id}@toeline.invalid`;

/** The rows that make up accounts with a password. */
export function accountRows(accounts: readonly AccountToCreate[], now: Date) {
  return {
    users: accounts.map(({ id, name, signInName, role, hasOneTimeCode }) => ({
      id,
      name,
      role,
      hasOneTimeCode,
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
  const rows = await database().user.findMany({ where: { role }, orderBy: { id: "asc" } });
  return rows.map(personOf).sort(byName);
}

/** The tutor with that sign-in name, in whatever case it is typed; null where nobody has it, or a learner. */
export async function findTutor(signInName: string): Promise<Person | null> {
  const row = await database().user.findFirst({ where: { username: signInName.trim().toLowerCase(), role: "tutor" } });
  return row && personOf(row);
}

/** Everybody's sign-in name and who they are. */
export async function listSignInNames(): Promise<readonly Pick<Person, "id" | "name" | "signInName">[]> {
  const rows = await database().user.findMany({ select: { id: true, name: true, username: true } });
  return rows.map(({ id, name, username }) => ({ id, name, signInName: username }));
}

/** Learners that a tutor works with: those in a class of theirs, and those in no class at all. */
const learnerOf = (tutorId: string) => ({
  role: "learner" as const,
  OR: [
    { memberships: { some: { leftAt: null, group: { tutors: { some: { userId: tutorId } } } } } },
    { memberships: { none: { leftAt: null } } },
  ],
});

/** One of the learners that a tutor works with; null for anybody else. */
export async function readLearnerOf(tutorId: string, id: string): Promise<Person | null> {
  const row = await database().user.findFirst({ where: { id, ...learnerOf(tutorId) } });
  return row && personOf(row);
}

/** Every learner that a tutor works with, by name. */
export async function listLearnersOf(tutorId: string): Promise<readonly Person[]> {
  const rows = await database().user.findMany({ where: learnerOf(tutorId), orderBy: { id: "asc" } });
  return rows.map(personOf).sort(byName);
}

/** Every learner who is in no class, by name. */
export async function listLearnersWithoutClass(): Promise<readonly Person[]> {
  const where = { role: "learner" as const, memberships: { none: { leftAt: null } } };
  const rows = await database().user.findMany({ where, orderBy: { id: "asc" } });
  return rows.map(personOf).sort(byName);
}

export interface OneTimeCode {
  readonly userId: string;
  readonly passwordHash: string;
}

/**
 * Puts one-time codes in place of passwords and ends every session opened with those, for all of them or for none; an entry
 * for the audit is kept with them.
 */
export async function replaceByOneTimeCodes(
  codes: readonly OneTimeCode[],
  now: Date,
  audit: AuditEntry | null = null,
): Promise<void> {
  const db = database();
  const userId = { in: codes.map((code) => code.userId) };
  await db.$transaction([
    ...codes.map((code) =>
      db.account.updateMany({
        where: { userId: code.userId, providerId: "credential" },
        data: { password: code.passwordHash, updatedAt: now },
      }),
    ),
    db.user.updateMany({ where: { id: userId }, data: { hasOneTimeCode: true } }),
    db.session.deleteMany({ where: { userId } }),
    db.auditEntry.createMany({ data: audit ? [auditRow(audit)] : [] }),
  ]);
}

/** Keeps a password that somebody chose in place of their one-time code, and ends their sessions but this one. */
export async function replaceOneTimeCode(
  { userId, passwordHash }: OneTimeCode,
  sessionId: string | null,
  now: Date,
): Promise<void> {
  const db = database();
  await db.$transaction([
    db.account.updateMany({
      where: { userId, providerId: "credential" },
      data: { password: passwordHash, updatedAt: now },
    }),
    db.user.update({ where: { id: userId }, data: { hasOneTimeCode: false } }),
    db.session.deleteMany({ where: { userId, NOT: { id: sessionId ?? "" } } }),
  ]);
}

/** The stored hash of somebody's password. */
export async function readPasswordHash(userId: string): Promise<string | null> {
  const row = await database().account.findFirst({ where: { userId, providerId: "credential" } });
  return row?.password ?? null;
}

export function personOf({ id, name, username, role, hasOneTimeCode, createdAt }: UserModel): Person {
  return { id, name, signInName: username, role, hasOneTimeCode, createdAt };
}

/** Names by id; whose account is gone is left out. */
export async function listPeopleNames(ids: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const rows = await database().user.findMany({ where: { id: { in: [...ids] } }, select: { id: true, name: true } });
  return new Map(rows.map(({ id, name }) => [id, name]));
}
