import type { Section } from "@/lib/results";
import { listPractisedSections } from "@/prisma/stores/practices";
import { isInSitting } from "@/prisma/stores/sittings";
import type { SpecimenSource } from "../generation/specimen-source";
import { currentCalibration } from "../progress/calibration";
import { chooseNextPiece } from "./choose-next-piece";
import { isStaying, type Seen } from "./who-stays";

/** The page that is asked for meanwhile comes first, and whoever takes any piece at once needs none chosen. */
const AFTER_MS = 3000;

const shared = globalThis as typeof globalThis & {
  toelineNextPieces?: { line: Promise<void>; ids: Set<string> };
  toelineOnToday?: Seen;
};

/**
 * Sees to it in the background, some seconds later, that a piece waits for a learner: a plate, and a fillet weld for whoever
 * practises on those too. One learner after the other, as they came, and fillet welds behind the plates of all who stand in the line;
 * whoever stands there already is not put there twice.
 */
export function keepNextReady(userId: string, source: SpecimenSource, clock: () => Date): void {
  shared.toelineNextPieces ??= { line: Promise.resolve(), ids: new Set() };
  const queue = shared.toelineNextPieces;
  if (queue.ids.has(userId)) return;
  queue.ids.add(userId);
  const stand = (turn: () => Promise<void>) => {
    queue.line = queue.line.then(turn).catch(report);
  };
  setTimeout(() => {
    stand(async () => {
      // what changes from now on is a reason to look once more
      queue.ids.delete(userId);
      await choose(userId, "plate", source, clock);
      const others = (await listPractisedSections(userId)).filter((section) => section !== "plate");
      for (const section of others) stand(() => choose(userId, section, source, clock));
    });
  }, AFTER_MS).unref();
}

/**
 * The same for whoever has handed in nothing yet, once they are seen to stay on Today: a newcomer who passes through on the way to
 * the drills, a sitting or any piece at all needs none chosen, and choosing and making one takes a core for ten seconds.
 */
export function keepFirstReady(userId: string, source: SpecimenSource, clock: () => Date): void {
  shared.toelineOnToday ??= new Map();
  if (isStaying(shared.toelineOnToday, userId, clock())) keepNextReady(userId, source, clock);
}

async function choose(userId: string, section: Section, source: SpecimenSource, clock: () => Date): Promise<void> {
  // in a sitting the machine is for what is sat
  if (await isInSitting(userId, clock())) return;
  const { corrections } = await currentCalibration(clock());
  await chooseNextPiece(userId, section, { source, clock, corrections });
}

/** The server's log is where whoever runs the workshop looks; nothing about a piece's seed is written there. */
function report(error: unknown): void {
  console.error("no next piece could be chosen:", error instanceof Error ? error.message : error);
}
