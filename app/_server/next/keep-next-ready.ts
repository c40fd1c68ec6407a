import type { Section } from "@/lib/results";
import { listPractisedSections } from "@/prisma/stores/practices";
import { isInSitting } from "@/prisma/stores/sittings";
import type { SpecimenSource } from "../generation/specimen-source";
import { currentCalibration } from "../progress/calibration";
import { chooseNextPiece } from "./choose-next-piece";

/** The page that is asked for meanwhile comes first, and whoever takes any piece at once needs none chosen. */
const AFTER_MS = 3000;

const shared = globalThis as typeof globalThis & { toelineNextPieces?: { line: Promise<void>; ids: Set<string> } };

/**
 * Sees to it in the background, some seconds later, that a piece waits for a learner: a plate, and a fillet weld for whoever
 * practises on those too. One learner after the other; whoever stands in the line already is not put there twice.
 */
export function keepNextReady(userId: string, source: SpecimenSource, clock: () => Date): void {
  shared.toelineNextPieces ??= { line: Promise.resolve(), ids: new Set() };
  const queue = shared.toelineNextPieces;
  if (queue.ids.has(userId)) return;
  queue.ids.add(userId);
  setTimeout(() => {
    queue.line = queue.line.then(async () => {
      // what changes from now on is a reason to look once more
      queue.ids.delete(userId);
      await chooseAll(userId, source, clock).catch(report);
    });
  }, AFTER_MS).unref();
}

async function chooseAll(userId: string, source: SpecimenSource, clock: () => Date): Promise<void> {
  // in a sitting the machine is for what is sat
  if (await isInSitting(userId, clock())) return;
  const { corrections } = await currentCalibration(clock());
  const sections: readonly Section[] = [...new Set<Section>(["plate", ...(await listPractisedSections(userId))])];
  for (const section of sections) {
    await chooseNextPiece(userId, section, { source, clock, corrections });
  }
}

/** The server's log is where whoever runs the workshop looks; nothing about a piece's seed is written there. */
function report(error: unknown): void {
  console.error("no next piece could be chosen:", error instanceof Error ? error.message : error);
}
