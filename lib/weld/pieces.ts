import type { Mm } from "../math";
import { FACES, type SurfaceFace } from "./face";
import { FILLET_HALF_WIDTH, FILLET_LENGTH } from "./fillet";
import { BUTT_PLATE_LENGTH, BUTT_PLATE_WIDTH } from "./joint";

/** The two kinds of joint that are welded here; what a piece is goes by its joint. */
export const JOINT_KINDS = ["butt", "fillet"] as const;
export type JointKind = (typeof JOINT_KINDS)[number];

/** What can be pointed at on a piece, mm: x from 0 to its length, y to half its width on either side. */
export interface PieceFacts {
  readonly faces: readonly SurfaceFace[];
  readonly length: Mm;
  readonly halfWidth: Mm;
}

export const PIECES: Readonly<Record<JointKind, PieceFacts>> = {
  butt: { faces: FACES, length: BUTT_PLATE_LENGTH, halfWidth: BUTT_PLATE_WIDTH / 2 },
  fillet: { faces: ["fillet"], length: FILLET_LENGTH, halfWidth: FILLET_HALF_WIDTH },
};

/** Start and finish of a fillet weld, which nobody measures, mm from where it begins and ends. Common practice, no source. */
export const FILLET_ENDS: Mm = 10;

/** So many stations are scribed on a fillet's base plate for legs and throat, 1 at the datum end. */
export const FILLET_STATIONS = 3;
