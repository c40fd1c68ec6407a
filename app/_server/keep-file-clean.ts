import { isInUse, readDirtySince, writeFileAnew } from "@/prisma/stores/file-care";

/** Nobody has saved for so long, ms. */
const QUIET_MS = 2 * 60_000;
const EVERY_MS = 30_000;

/** Writes the file of the database anew where something was erased and nobody would have to wait; false where it is not done. */
export async function cleanFile(now: Date): Promise<boolean> {
  if ((await readDirtySince()) === null) return false;
  if (await isInUse(new Date(now.getTime() - QUIET_MS))) return false;
  return writeFileAnew();
}

const shared = globalThis as typeof globalThis & { toelineFileCare?: Promise<void> };

/** Looks after the file from now on while the process lives; once for each process. */
export function keepFileClean(clock: () => Date): void {
  shared.toelineFileCare ??= cleanAndWait(clock);
}

async function cleanAndWait(clock: () => Date): Promise<void> {
  for (;;) {
    await cleanFile(clock()).catch((error) => {
      // tried again: what was erased is gone from the tables in any case
      console.error("the file could not be written anew:", error instanceof Error ? error.message : error);
    });
    await new Promise((resolve) => setTimeout(resolve, EVERY_MS).unref());
  }
}
