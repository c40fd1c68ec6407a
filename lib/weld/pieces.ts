import type { Mm } from "../math";
import { type Aspect, FACES, faceOf, type SurfaceFace } from "./face";
import { FILLET_HALF_WIDTH, FILLET_LENGTH, FILLET_PLATE_BEYOND, FILLET_PLATE_SEEN } from "./fillet";
import { BUTT_PLATE_LENGTH, BUTT_PLATE_WIDTH } from "./joint";

/** The two kinds of joint that are welded here; what a piece is goes by its joint. */
export const JOINT_KINDS = ["butt", "fillet"] as const;
export type JointKind = (typeof JOINT_KINDS)[number];

/** What can be pointed at on a piece, mm: x from 0 to its length, y to half its width on either side. */
export interface PieceFacts {
  readonly faces: readonly SurfaceFace[];
  /** How it can be turned to the eye, in the order of turning. */
  readonly aspects: readonly Aspect[];
  readonly length: Mm;
  readonly halfWidth: Mm;
}

export const PIECES: Readonly<Record<JointKind, PieceFacts>> = {
  butt: { faces: FACES, aspects: FACES, length: BUTT_PLATE_LENGTH, halfWidth: BUTT_PLATE_WIDTH / 2 },
  fillet: {
    faces: ["fillet"],
    aspects: ["fillet", "base", "standing"],
    length: FILLET_LENGTH,
    halfWidth: FILLET_HALF_WIDTH,
  },
};

/** The piece that has a face. */
export const jointOf = (face: SurfaceFace): JointKind => (face === "fillet" ? "fillet" : "butt");

/** What is seen of a piece from an aspect, mm: x from 0 to `length`, y from `low` to `high`. */
export interface Extent {
  readonly length: Mm;
  readonly low: Mm;
  readonly high: Mm;
}

/** What is seen from an aspect. */
export function extentOf(aspect: Aspect): Extent {
  const { length, halfWidth } = PIECES[jointOf(faceOf(aspect))];
  if (aspect === "base") return { length, low: -FILLET_PLATE_BEYOND, high: FILLET_PLATE_SEEN };
  if (aspect === "standing") return { length, low: -FILLET_PLATE_SEEN, high: FILLET_PLATE_BEYOND };
  return { length, low: -halfWidth, high: halfWidth };
}

/** Start and finish of a fillet weld, which nobody measures, mm from where it begins and ends. Common practice, no source. */
export const FILLET_ENDS: Mm = 10;

/** So many stations are scribed on a fillet's base plate for legs and throat, 1 at the datum end. */
export const FILLET_STATIONS = 3;
