import { IMPERFECTION_TYPES, type ImperfectionType, imperfection } from "../imperfections";

/** What only a gauge tells. */
const GAUGED: ReadonlySet<ImperfectionType> = new Set(["excess-weld-metal", "excess-penetration"]);

/**
 * What drills for the eye can be about: what lies on butt plates in one place. Plates out of line are so everywhere, in no window
 * more than in another.
 */
export const EYE_TYPES: readonly ImperfectionType[] = IMPERFECTION_TYPES.filter((type) => {
  const { family, faces } = imperfection(type);
  return family !== "misalignment" && faces.some((face) => face !== "fillet") && !GAUGED.has(type);
});
