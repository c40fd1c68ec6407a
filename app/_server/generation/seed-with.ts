import type { ImperfectionType } from "@/lib/imperfections";
import { BLUEPRINTS, predictPlate } from "@/lib/specimen";

/** Which imperfections a plate is wanted for, and seeds that nobody knows, to choose from. */
export interface SeedOrder {
  readonly types: readonly ImperfectionType[];
  readonly seeds: readonly string[];
}

/**
 * The seed whose plate for practice will most likely have most of what is wanted; plates are drawn and not made. A tenth of a
 * second a seed, and so for a worker thread.
 */
export function seedWith({ types, seeds }: SeedOrder): string {
  let best = { seed: seeds[0], has: -1 };
  for (const seed of seeds) {
    const plate = predictPlate(seed, BLUEPRINTS.practice);
    if (!plate.ok) continue;
    const there = new Set(plate.faces.flatMap(({ items }) => items.map(({ type }) => type)));
    const has = types.filter((type) => there.has(type)).length;
    if (has > best.has) best = { seed, has };
    if (has === types.length) break;
  }
  return best.seed;
}
