import type { WorkshopSettings } from "@/lib/workshop";
import { database, isDuplicate } from "../client";
import type { WorkshopModel } from "../generated/client/models";
import { demoHistoryRow } from "./demo-history";
import { type AccountToCreate, accountRows } from "./people";

/** One installation serves one workshop: its row has a fixed id, so it cannot be set up twice. */
const ID = "workshop";

/** The workshop's settings, or null before it is set up. */
export async function readWorkshop(): Promise<WorkshopSettings | null> {
  const row = await database().workshop.findUnique({ where: { id: ID } });
  return row && settingsOf(row);
}

/**
 * Creates the workshop and its first accounts, and notes that a demo is to have a past, all or nothing; false if there is a
 * workshop already.
 */
export async function createWorkshop(
  settings: WorkshopSettings,
  accounts: readonly AccountToCreate[],
  now: Date,
  { withPast = false }: { readonly withPast?: boolean } = {},
): Promise<boolean> {
  const db = database();
  const rows = accountRows(accounts, now);
  try {
    await db.$transaction([
      db.workshop.create({ data: { id: ID, createdAt: now, ...columnsOf(settings) } }),
      db.user.createMany({ data: rows.users }),
      db.account.createMany({ data: rows.credentials }),
      db.demoHistory.createMany({ data: withPast ? [demoHistoryRow(now)] : [] }),
    ]);
    return true;
  } catch (error) {
    if (isDuplicate(error)) return false;
    throw error;
  }
}

export async function updateWorkshop(settings: WorkshopSettings): Promise<void> {
  await database().workshop.update({ where: { id: ID }, data: columnsOf(settings) });
}

function columnsOf({ name, allowsOwnAccounts, passMarks }: WorkshopSettings) {
  return { name, allowsOwnAccounts, platePassMark: passMarks.plate, filletPassMark: passMarks.fillet };
}

function settingsOf({ name, allowsOwnAccounts, platePassMark, filletPassMark }: WorkshopModel): WorkshopSettings {
  return { name, allowsOwnAccounts, passMarks: { plate: platePassMark, fillet: filletPassMark } };
}
