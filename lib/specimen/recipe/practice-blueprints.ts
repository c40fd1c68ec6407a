import type { Blueprint, SectionBlueprint } from "./blueprint";
import { PRACTICE } from "./blueprints";

/** Numbers of small, medium and large ones on a face. */
type Sizes = readonly [small: number, medium: number, large: number];

const BANDS = ["small", "medium", "large"] as const;

function face(of: SectionBlueprint, sizes: Sizes): SectionBlueprint {
  const slots = BANDS.flatMap((band, n) =>
    sizes[n] > 0 ? [{ count: sizes[n], families: "any", band, place: "any" } as const] : [],
  );
  return { ...of, slots, extras: 0 };
}

const of = (cap: Sizes, root: Sizes): Blueprint => ({
  ...PRACTICE,
  sections: { cap: face(PRACTICE.sections.cap, cap), root: face(PRACTICE.sections.root, root) },
});

/**
 * Plates for practice: mostly large, of every size or mostly small; with much to find or with little. Nothing comes by itself: what
 * a learner is to meet is asked for, plates that stand apart included.
 */
export const PRACTICE_BLUEPRINTS = {
  "plain-dense": of([0, 2, 5], [0, 1, 4]),
  "mixed-dense": of([2, 3, 2], [2, 2, 1]),
  "fine-dense": of([5, 2, 0], [4, 1, 0]),
  "plain-sparse": of([0, 1, 2], [0, 1, 1]),
  "mixed-sparse": of([1, 1, 1], [1, 1, 0]),
  "fine-sparse": of([2, 1, 0], [2, 0, 0]),
} as const satisfies Record<string, Blueprint>;
