import { readSitting, type StoredSitting } from "@/prisma/stores/sittings";

/** So long one reading is told to everybody who follows the same sitting, ms; well under the second after which each asks again. */
const FRESH_FOR_MS = 400;
/** More sittings than are on in one workshop at a time. */
const MOST_KEPT = 50;

interface Reading {
  /** Nothing that was stored later is in it for certain. */
  readonly at: Date;
  readonly stored: Promise<StoredSitting | null>;
}

const readings = new Map<string, Reading>();

/**
 * A sitting as it was at most a moment ago, with when that was. A class of 24 has as many live clocks, and reading a whole
 * sitting for each of them once a second would take more of a server than all of their saves.
 */
export async function readTogether(
  id: string,
  now: Date,
): Promise<{ readonly at: Date; readonly stored: StoredSitting | null }> {
  const known = readings.get(id);
  const age = known ? now.getTime() - known.at.getTime() : FRESH_FOR_MS;
  const reading = known && age >= 0 && age < FRESH_FOR_MS ? known : { at: now, stored: readSitting(id) };
  if (reading !== known) {
    readings.delete(id);
    readings.set(id, reading);
    for (const oldest of [...readings.keys()].slice(0, -MOST_KEPT)) readings.delete(oldest);
    reading.stored.catch(() => readings.get(id) === reading && readings.delete(id));
  }
  return { at: reading.at, stored: await reading.stored };
}
