import { database } from "../client";

/** One installation has one workshop, and so one demo at most. */
const ID = "demo";

/** How far the past of the demo workshop is written. */
export interface DemoHistory {
  readonly openedAt: Date;
  /** Entries written. */
  readonly done: number;
  /** Of so many; 0 before the first. */
  readonly total: number;
  readonly finishedAt: Date | null;
}

/** The row of a past that is to be written, and ends on the day of `openedAt`: stored with the workshop, never after it. */
export const demoHistoryRow = (openedAt: Date) => ({ id: ID, openedAt });

/** Null in a workshop without a demo's past. */
export async function readDemoHistory(): Promise<DemoHistory | null> {
  return database().demoHistory.findUnique({
    where: { id: ID },
    select: { openedAt: true, done: true, total: true, finishedAt: true },
  });
}

export async function noteDemoProgress(done: number, total: number): Promise<void> {
  await database().demoHistory.update({ where: { id: ID }, data: { done, total } });
}

/** Keeps a sitting from today's clock while its past is written; null lets go. */
export async function holdSitting(heldSittingId: string | null): Promise<void> {
  await database().demoHistory.update({ where: { id: ID }, data: { heldSittingId } });
}

export async function readHeldSitting(): Promise<string | null> {
  const row = await database().demoHistory.findUnique({ where: { id: ID }, select: { heldSittingId: true } });
  return row?.heldSittingId ?? null;
}

export async function finishDemoHistory(finishedAt: Date): Promise<void> {
  await database().demoHistory.update({ where: { id: ID }, data: { finishedAt, heldSittingId: null } });
}
