import type { SectionTruth } from "../difficulty";
import { predictFillet } from "./draw-recipe";
import type { FilletBlueprint } from "./fillet-blueprint";

/** So many are drawn at most: what has room more seldom would often not be met when it is made. */
const MOST_DRAWN = 8;

/**
 * What the fillet of a seed and a blueprint will most likely have, drawn anew like the one that is made until all that the blueprint
 * names is on it; null where hardly a draw has room for that.
 */
export function foreseeFillet(seed: string, blueprint: FilletBlueprint): SectionTruth | null {
  for (let attempt = 0; attempt < MOST_DRAWN; attempt++) {
    const truth = predictFillet(seed, blueprint, attempt);
    const hasType = (type: string) => truth.items.some((item) => item.type === type);
    if (blueprint.includes?.every(hasType) ?? true) return truth;
  }
  return null;
}
