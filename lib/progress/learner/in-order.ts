import { z } from "zod";
import type { SectionObservations } from "../observations/observation";
import { afterSection, learnerSchema, NEW_LEARNER } from "./learner";

/** A section's place in the order in which sections were handed in. */
const placeSchema = z.strictObject({
  /** Milliseconds since 1970. */
  at: z.int(),
  /** Decides between sections of the same moment. */
  id: z.string(),
});
export type PlaceInOrder = z.infer<typeof placeSchema>;

/** A learner, and the last section that went into it; null before the first. */
export const learnerInOrderSchema = z.strictObject({ learner: learnerSchema, last: placeSchema.nullable() });
export type LearnerInOrder = z.infer<typeof learnerInOrderSchema>;

export const NEW_IN_ORDER: LearnerInOrder = { learner: NEW_LEARNER, last: null };

/** A handed-in section in its place. */
export interface PlacedSection extends PlaceInOrder {
  readonly observations: SectionObservations;
}

const isBefore = (a: PlaceInOrder, b: PlaceInOrder): boolean => a.at < b.at || (a.at === b.at && a.id < b.id);

/**
 * The learner after these sections, in whatever order they are given; null where one of them was handed in before the last that
 * went in, so that everything has to be taken in anew.
 */
export function takenIn(known: LearnerInOrder, sections: readonly PlacedSection[]): LearnerInOrder | null {
  const ordered = [...sections].sort((a, b) => (isBefore(a, b) ? -1 : 1));
  const { last } = known;
  if (last && ordered.some((section) => !isBefore(last, section))) return null;
  return ordered.reduce<LearnerInOrder>(
    ({ learner }, { at, id, observations }) => ({
      learner: afterSection(learner, observations, at),
      last: { at, id },
    }),
    known,
  );
}
