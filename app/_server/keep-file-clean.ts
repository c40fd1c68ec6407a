import { emptyLog, isInUse, noteClean, readDirtySince, writeFileAnew } from "@/prisma/stores/file-care";

/** Nobody has saved for so long, ms. */
const QUIET_MS = 2 * 60_000;
const EVERY_MS = 30_000;
/** The pause doubles with every time that the file cannot be written, up to this, ms. */
const LONGEST_PAUSE_MS = 60 * 60_000;

/** What of it is done: writing the file holds everybody up, and is not done again for a log that could not be emptied. */
export interface FileCare {
  /** The erasure after which the file was written anew. */
  writtenFor: number | null;
}

/** Writes the file of the database anew where something was erased and nobody would have to wait; false where it is not done. */
export async function cleanFile(now: Date, care: FileCare = { writtenFor: null }): Promise<boolean> {
  const dirtySince = await readDirtySince();
  if (dirtySince === null) return false;
  if (await isInUse(new Date(now.getTime() - QUIET_MS))) return false;
  if (care.writtenFor !== dirtySince.getTime()) {
    await writeFileAnew();
    care.writtenFor = dirtySince.getTime();
  }
  return (await emptyLog()) && noteClean(dirtySince);
}

const shared = globalThis as typeof globalThis & { toelineFileCare?: Promise<void> };

/** Looks after the file from now on while the process lives; once for each process. */
export function keepFileClean(clock: () => Date): void {
  shared.toelineFileCare ??= cleanAndWait(clock);
}

async function cleanAndWait(clock: () => Date): Promise<void> {
  const care: FileCare = { writtenFor: null };
  let pause = EVERY_MS;
  for (;;) {
    try {
      await cleanFile(clock(), care);
      pause = EVERY_MS;
    } catch (error) {
      // tried again: what was erased is gone from the tables in any case
      console.error("the file could not be written anew:", error instanceof Error ? error.message : error);
      pause = Math.min(LONGEST_PAUSE_MS, pause * 2);
    }
    await new Promise((resolve) => setTimeout(resolve, pause).unref());
  }
}
