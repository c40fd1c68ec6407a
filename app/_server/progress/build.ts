import { setImmediate as breathe } from "node:timers/promises";
import { addSections, EMPTY_LEARNER_TALLY, NEW_IN_ORDER, takenIn } from "@/lib/progress";
import {
  beginBuilding,
  listCounted,
  listToBuild,
  listUnobserved,
  listWithoutTallies,
  readObservations,
  readTallyState,
  storeBuilt,
  storeObservations,
} from "@/prisma/stores/progress";
import { observeStored } from "./observe";

/** So many sections are read at once. */
const AT_ONCE = 10;
/** Somebody who hands in again and again meanwhile is left to the next round. */
const TRIES = 5;

/**
 * Builds a learner's tallies, and what the learner model knows of them, from everything stored that counts, unless they are up to date. What was observed on the way is
 * kept, so that one that is broken off goes on from there. It holds no lock while it reads: what counts anew meanwhile is
 * noticed when it stores, and it starts over.
 */
export async function buildTallies(userId: string): Promise<void> {
  for (let tries = 0; tries < TRIES; tries++) {
    if ((await readTallyState(userId)).isLearnerCurrent) return;
    const revision = await beginBuilding(userId);
    await observeMissing(userId);
    let tally = EMPTY_LEARNER_TALLY;
    let learner = NEW_IN_ORDER;
    const counted = await listCounted(userId);
    for (let from = 0; from < counted.length; from += AT_ONCE) {
      const sections = await readObservations(counted.slice(from, from + AT_ONCE));
      tally = addSections(
        tally,
        sections.map(({ observations }) => observations),
      );
      // what counts anew meanwhile is noticed when it is stored
      learner = takenIn(learner, sections) ?? learner;
      await breathe();
    }
    if (await storeBuilt(userId, revision, { tally, learner })) return;
  }
}

/** Observes what is stored and was never observed, or by another version. One that cannot be read keeps no other back. */
async function observeMissing(userId: string): Promise<void> {
  for (const attempt of await listUnobserved(userId)) {
    try {
      const observations = await observeStored(attempt);
      if (observations) await storeObservations(attempt, observations);
    } catch (error) {
      console.error(`section ${attempt.id} is left out of progress:`, error instanceof Error ? error.message : error);
    }
    await breathe();
  }
}

/** Puts everybody with marks and without tallies among those whose are to be built. */
export async function noteEverybody(): Promise<void> {
  for (const userId of await listWithoutTallies()) await beginBuilding(userId);
}

/** Builds the tallies of everybody whose are to be built. */
export async function buildAllTallies(): Promise<void> {
  for (const userId of await listToBuild()) await buildTallies(userId).catch(report);
}

const EVERY_MS = 2000;
const shared = globalThis as typeof globalThis & { toelineTallies?: Promise<void> };

/** Builds what is to be built now, and from then on every two seconds while the process lives; once for each process. */
export function keepTalliesBuilt(): void {
  shared.toelineTallies ??= buildAndWait();
}

async function buildAndWait(): Promise<void> {
  // from a database of before; later on whoever hands in for the first time begins with tallies
  await noteEverybody().catch(report);
  for (;;) {
    await buildAllTallies().catch(report);
    await new Promise((resolve) => setTimeout(resolve, EVERY_MS).unref());
  }
}

function report(error: unknown): void {
  console.error("progress could not be built:", error instanceof Error ? error.message : error);
}
