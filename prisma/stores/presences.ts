import { database } from "../client";

/** Notes that a learner is in a sitting. */
export async function notePresence(sittingId: string, userId: string, now: Date): Promise<void> {
  const key = { sittingId, userId };
  await database().sittingPresence.upsert({
    where: { sittingId_userId: key },
    create: { ...key, enteredAt: now, lastSeenAt: now },
    update: { lastSeenAt: now },
  });
}

export interface Presence {
  readonly userId: string;
  readonly enteredAt: Date;
  readonly lastSeenAt: Date;
}

export async function listPresences(sittingId: string): Promise<readonly Presence[]> {
  return database().sittingPresence.findMany({
    where: { sittingId },
    select: { userId: true, enteredAt: true, lastSeenAt: true },
  });
}
