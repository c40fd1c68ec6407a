import { z } from "zod";
import { ASPECTS, type Aspect } from "../weld";
import { countsOf, type Trail } from "./trail";

/** Longer than a day of looking at one place is no count, beats. */
const MOST = 200_000;

/** Pairs of a count and how many times it follows itself. */
const runsSchema = (aspect: Aspect) =>
  z
    .array(z.number().int().min(0).max(MOST))
    .max(2 * countsOf(aspect))
    .refine((runs) => isWhole(aspect, runs), `pairs of a count and how often it comes, ${countsOf(aspect)} in all`);

/** A trail as it is sent and stored, version 1: equal counts that follow each other are told once. */
export const packedTrailSchema = z.strictObject({
  version: z.literal(1),
  views: z
    .strictObject({
      cap: runsSchema("cap"),
      root: runsSchema("root"),
      fillet: runsSchema("fillet"),
      base: runsSchema("base"),
      standing: runsSchema("standing"),
    })
    .partial(),
});
export type PackedTrail = z.infer<typeof packedTrailSchema>;

function isWhole(aspect: Aspect, runs: readonly number[]): boolean {
  if (runs.length % 2 === 1) return false;
  return runs.reduce((sum, times, at) => (at % 2 === 1 ? sum + times : sum), 0) === countsOf(aspect);
}

export function packTrail(trail: Trail): PackedTrail {
  const views: Partial<Record<Aspect, number[]>> = {};
  for (const aspect of ASPECTS) {
    const counts = trail[aspect];
    if (!counts) continue;
    const runs: number[] = [];
    for (const count of counts) {
      if (runs.length > 0 && runs[runs.length - 2] === count) runs[runs.length - 1] += 1;
      else runs.push(Math.min(count, MOST), 1);
    }
    views[aspect] = runs;
  }
  return { version: 1, views };
}

export function unpackTrail({ views }: PackedTrail): Trail {
  const trail: Partial<Record<Aspect, readonly number[]>> = {};
  for (const aspect of ASPECTS) {
    const runs = views[aspect];
    if (!runs) continue;
    trail[aspect] = runs.flatMap((count, at) => (at % 2 === 0 ? new Array<number>(runs[at + 1]).fill(count) : []));
  }
  return trail;
}
