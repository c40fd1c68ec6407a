import { database } from "../client";

/** A device that somebody is signed in on. */
export interface OpenSession {
  readonly id: string;
  readonly since: Date;
  /** How its browser names itself. */
  readonly userAgent: string;
  /** Of the network that it signed in from; null where that is not known. */
  readonly address: string | null;
}

/** Where somebody is signed in, the latest first. */
export async function listSessions(userId: string, now: Date): Promise<readonly OpenSession[]> {
  const rows = await database().session.findMany({
    where: { userId, expiresAt: { gt: now } },
    orderBy: [{ createdAt: "desc" }, { id: "asc" }],
  });
  return rows.map(({ id, createdAt, userAgent, ipAddress }) => ({
    id,
    since: createdAt,
    userAgent: userAgent ?? "",
    address: ipAddress || null,
  }));
}

/** Ends one of somebody's sessions; false where it is not among theirs. */
export async function endSession(userId: string, id: string): Promise<boolean> {
  const { count } = await database().session.deleteMany({ where: { userId, id } });
  return count === 1;
}

/** Ends all sessions of somebody but one, or all with null; returns how many. */
export async function endSessions(userId: string, except: string | null): Promise<number> {
  const { count } = await database().session.deleteMany({ where: { userId, NOT: { id: except ?? "" } } });
  return count;
}
