import type { ClassDetails, ClassGroup, ClassMember } from "@/lib/classes";
import { byName } from "@/lib/workshop";
import { database, isDuplicate } from "../client";
import type { ClassGroupModel } from "../generated/client/models";
import { type AccountToCreate, accountRows, personOf } from "./people";

const withPeople = {
  tutors: {
    orderBy: [{ addedAt: "asc" as const }, { userId: "asc" as const }],
    select: { user: { select: { id: true, name: true } } },
  },
  _count: { select: { members: { where: { leftAt: null } } } },
};

/** Makes a class with its first tutor and no members. */
export async function createClass(
  { id, name, notes }: ClassDetails & { readonly id: string },
  tutorId: string,
  now: Date,
): Promise<void> {
  await database().classGroup.create({
    data: { id, name, notes, createdAt: now, tutors: { create: { userId: tutorId, addedAt: now } } },
  });
}

/** One of the classes that a tutor works with; null for any other. */
export async function readClassOf(tutorId: string, id: string): Promise<ClassGroup | null> {
  const where = { id, tutors: { some: { userId: tutorId } } };
  const row = await database().classGroup.findFirst({ where, include: withPeople });
  return row && groupOf(row);
}

/** The classes that a tutor works with, by name; also the archived ones. */
export async function listClassesOf(tutorId: string): Promise<readonly ClassGroup[]> {
  const rows = await database().classGroup.findMany({
    where: { tutors: { some: { userId: tutorId } } },
    orderBy: [{ name: "asc" }, { createdAt: "asc" }, { id: "asc" }],
    include: withPeople,
  });
  return rows.map(groupOf);
}

/** The classes in use that somebody is a member of, by name. */
export async function listClassesWith(userId: string): Promise<readonly ClassGroup[]> {
  const rows = await database().classGroup.findMany({
    where: { archivedAt: null, members: { some: { userId, leftAt: null } } },
    orderBy: [{ name: "asc" }, { id: "asc" }],
    include: withPeople,
  });
  return rows.map(groupOf);
}

/** Every class that somebody is or was in, the earliest first. */
export async function listMembershipsOf(userId: string): Promise<
  readonly {
    readonly id: string;
    readonly name: string;
    readonly joinedAt: Date;
    readonly leftAt: Date | null;
    readonly timeFactor: number;
  }[]
> {
  const rows = await database().classMember.findMany({
    where: { userId },
    orderBy: [{ joinedAt: "asc" }, { groupId: "asc" }],
    include: { group: { select: { name: true } } },
  });
  return rows.map(({ groupId, group, joinedAt, leftAt, timeFactor }) => {
    return { id: groupId, name: group.name, joinedAt, leftAt, timeFactor };
  });
}

/** The class in use with that join code. */
export async function findClassByJoinCode(joinCode: string): Promise<ClassGroup | null> {
  const row = await database().classGroup.findFirst({ where: { joinCode, archivedAt: null }, include: withPeople });
  return row && groupOf(row);
}

export async function updateClass(id: string, { name, notes }: ClassDetails): Promise<void> {
  await database().classGroup.update({ where: { id }, data: { name, notes } });
}

/** Archives a class, which switches its join code off, or takes it back into use with null. */
export async function archiveClass(id: string, archivedAt: Date | null): Promise<void> {
  await database().classGroup.update({ where: { id }, data: { archivedAt, joinCode: null } });
}

/** Gives a class another join code, or none; false where another class has this one. */
export async function setJoinCode(id: string, joinCode: string | null): Promise<boolean> {
  try {
    await database().classGroup.update({ where: { id }, data: { joinCode } });
    return true;
  } catch (error) {
    if (isDuplicate(error)) return false;
    throw error;
  }
}

/** Lets another tutor work with a class; does nothing where they do already. */
export async function addClassTutor(groupId: string, userId: string, now: Date): Promise<void> {
  const key = { groupId, userId };
  await database().classTutor.upsert({
    where: { groupId_userId: key },
    create: { ...key, addedAt: now },
    update: {},
  });
}

/** Takes a class from a tutor unless they are its last one: then false. */
export async function removeClassTutor(groupId: string, userId: string): Promise<boolean> {
  return database().$transaction(async (transaction) => {
    const others = await transaction.classTutor.count({ where: { groupId, NOT: { userId } } });
    if (others === 0) return false;
    const { count } = await transaction.classTutor.deleteMany({ where: { groupId, userId } });
    return count === 1;
  });
}

/** Everybody who is or was in a class, by name. */
export async function listMembers(groupId: string): Promise<readonly ClassMember[]> {
  const rows = await database().classMember.findMany({
    where: { groupId },
    orderBy: { userId: "asc" },
    include: { user: true },
  });
  return rows
    .map(({ user, joinedAt, leftAt, timeFactor }) => ({ person: personOf(user), joinedAt, leftAt, timeFactor }))
    .sort((a, b) => byName(a.person, b.person));
}

export interface Enrolment {
  readonly groupId: string;
  /** Accounts that are made for it. */
  readonly accounts: readonly AccountToCreate[];
  /** Learners with an account; who is a member already stays as they are. */
  readonly learnerIds: readonly string[];
}

/** Makes accounts and puts everybody into a class, all or nothing; false where a sign-in name is taken. */
export async function enrol({ groupId, accounts, learnerIds }: Enrolment, now: Date): Promise<boolean> {
  const rows = accountRows(accounts, now);
  try {
    await database().$transaction(async (transaction) => {
      await transaction.user.createMany({ data: rows.users });
      await transaction.account.createMany({ data: rows.credentials });
      const known = { groupId, userId: { in: [...learnerIds] } };
      const kept = await transaction.classMember.findMany({ where: known, select: { userId: true } });
      await transaction.classMember.updateMany({
        where: { ...known, NOT: { leftAt: null } },
        data: { joinedAt: now, leftAt: null },
      });
      const seen = new Set(kept.map(({ userId }) => userId));
      const fresh = [...accounts.map(({ id }) => id), ...learnerIds.filter((id) => !seen.has(id))];
      await transaction.classMember.createMany({
        data: fresh.map((userId) => ({ groupId, userId, joinedAt: now })),
      });
    });
    return true;
  } catch (error) {
    if (isDuplicate(error)) return false;
    throw error;
  }
}

/** Takes a learner out of a class; false where they are not in it. */
export async function leaveClass(groupId: string, userId: string, now: Date): Promise<boolean> {
  const { count } = await database().classMember.updateMany({
    where: { groupId, userId, leftAt: null },
    data: { leftAt: now },
  });
  return count === 1;
}

/** Moves a learner from one class into another, with their time factor; false where they are not in the first. */
export async function moveMember(userId: string, from: string, to: string, now: Date): Promise<boolean> {
  return database().$transaction(async (transaction) => {
    const current = await transaction.classMember.findFirst({ where: { groupId: from, userId, leftAt: null } });
    if (!current) return false;
    const { timeFactor } = current;
    await transaction.classMember.update({
      where: { groupId_userId: { groupId: from, userId } },
      data: { leftAt: now },
    });
    const key = { groupId: to, userId };
    const before = await transaction.classMember.findUnique({ where: { groupId_userId: key } });
    // who is in both classes already stays there as they are
    if (before?.leftAt === null) return true;
    await transaction.classMember.upsert({
      where: { groupId_userId: key },
      create: { ...key, joinedAt: now, timeFactor },
      update: { joinedAt: now, leftAt: null, timeFactor },
    });
    return true;
  });
}

/** Sets what a member's time is multiplied by; false where they are not in the class. */
export async function setTimeFactor(groupId: string, userId: string, timeFactor: number): Promise<boolean> {
  const { count } = await database().classMember.updateMany({
    where: { groupId, userId, leftAt: null },
    data: { timeFactor },
  });
  return count === 1;
}

type GroupRow = ClassGroupModel & {
  readonly tutors: readonly { readonly user: { readonly id: string; readonly name: string } }[];
  readonly _count: { readonly members: number };
};

function groupOf({ id, name, notes, joinCode, createdAt, archivedAt, tutors, _count }: GroupRow): ClassGroup {
  return {
    id,
    name,
    notes,
    joinCode,
    createdAt,
    archivedAt,
    tutors: tutors.map(({ user }) => user),
    memberCount: _count.members,
  };
}
