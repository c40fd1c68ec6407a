import type { SpecimenSource } from "@/app/_server/generation/specimen-source";
import { readWorkshop } from "@/prisma/stores/workshops";
import { openPieces, type PieceMaker } from "./pieces";
import { writeHistory } from "./write-history";
import type { Writing } from "./writing";

const LOOK_EVERY_MS = 1500;
/** Between two entries: an autosave that comes in gets its turn. */
const REST_MS = 15;
/** After something failed: a database that is busy has time to come back. */
const PAUSE_MS = 5000;

const wait = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms).unref());
const report = (what: string, error: unknown) =>
  console.error(`${what}:`, error instanceof Error ? error.message : error);

const shared = globalThis as typeof globalThis & { toelineDemo?: Promise<void> };

/** Once for each process: writes the past of a demo workshop as soon as one is opened, or goes on with it after a start. */
export function keepWritingDemo(maker: PieceMaker, specimens: SpecimenSource): void {
  shared.toelineDemo ??= writeToTheEnd(openPieces(maker, wait), specimens);
}

/** Whatever stops it: it goes on from where it was left. */
async function writeToTheEnd(piece: Writing["piece"], specimens: SpecimenSource): Promise<void> {
  for (;;) {
    try {
      return await waitAndWrite(piece, specimens);
    } catch (error) {
      report("the demo's history waits, and goes on", error);
      await wait(PAUSE_MS);
    }
  }
}

async function waitAndWrite(piece: Writing["piece"], specimens: SpecimenSource): Promise<void> {
  while (!(await readWorkshop())) await wait(LOOK_EVERY_MS);
  const rests = { rest: () => wait(REST_MS), pause: () => wait(PAUSE_MS) };
  await writeHistory({ piece, specimens }, { now: () => new Date(), ...rests, report });
}
