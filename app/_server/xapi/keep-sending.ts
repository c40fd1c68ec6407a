import { sendWaiting } from "./send";
import { type RecordStore, recordStore } from "./settings";

const EVERY_MS = 2000;

const shared = globalThis as typeof globalThis & { toelineSending?: Promise<void> };

/** Sends statements from now on while the process lives, where a record store is configured; once for each process. */
export function keepSending(clock: () => Date): void {
  const store = configured();
  if (store) shared.toelineSending ??= sendAndWait(store, clock);
}

function configured(): RecordStore | null {
  try {
    return recordStore();
  } catch (error) {
    report(error);
    return null;
  }
}

async function sendAndWait(store: RecordStore, clock: () => Date): Promise<void> {
  for (;;) {
    await sendWaiting({ store, clock }).catch(report);
    await new Promise((resolve) => setTimeout(resolve, EVERY_MS).unref());
  }
}

function report(error: unknown): void {
  console.error("statements could not be sent:", error instanceof Error ? error.message : error);
}
