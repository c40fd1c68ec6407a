import { z } from "zod";
import { type Coverage, coverageOf, NOTHING_SEEN, seenStretches } from "@/lib/bench";
import { SURFACE_FACES } from "@/lib/weld";

const stretchesSchema = z.array(z.object({ from: z.number(), to: z.number() }));
const keptSchema = z.partialRecord(z.enum(SURFACE_FACES), stretchesSchema);

const keyOf = (id: string) => `toeline.looked-at.${id}`;

/** What this browser kept of where a practice's plate was looked at closely. Storage may hold nothing, or something else. */
export function readKeptCoverage(id: string): Coverage {
  try {
    const parsed = keptSchema.safeParse(JSON.parse(localStorage.getItem(keyOf(id)) ?? "null"));
    return parsed.success ? coverageOf(parsed.data) : NOTHING_SEEN;
  } catch {
    return NOTHING_SEEN;
  }
}

export function keepCoverage(id: string, coverage: Coverage): void {
  try {
    const stretches = SURFACE_FACES.map((face) => [face, seenStretches(coverage[face])] as const);
    const kept = Object.fromEntries(stretches.filter(([, seen]) => seen.length > 0));
    localStorage.setItem(keyOf(id), JSON.stringify(kept));
  } catch {
    // a full or forbidden storage forgets the trace, and nothing else
  }
}

/** Handed in: the plate is not looked over any more. */
export function forgetKeptCoverage(id: string): void {
  try {
    localStorage.removeItem(keyOf(id));
  } catch {
    // storage is switched off, so nothing was kept
  }
}
