import type { Field } from "../field";
import type { Point } from "../truth";

/** Heights of a finished strip: all that a gauge could feel. */
export type Heights = Pick<Field, "grid" | "z">;

/** What measuring takes from a finished face: heights, and where the outer toes of the weld run (y mm per column). */
export interface Finished {
  readonly strip: Heights;
  readonly toeMinus: Float32Array;
  readonly toePlus: Float32Array;
}

/** Plate B's side (y < 0) or plate A's (y > 0). */
export type Side = 1 | -1;

/** A stretch along the weld, mm from the datum. */
export interface Range {
  readonly from: number;
  readonly to: number;
}

/** One imperfection as measured, mm. */
export interface Measured {
  /** Outer edges of the first and last column (pixel) of its stretch. */
  readonly start: number;
  readonly end: number;
  /** Mean y of the places that gave the size, one per column of the stretch. */
  readonly across: number;
  readonly size: number;
  /** Largest width across over the columns of the stretch. */
  readonly width: number;
  /** Where `size` was measured. */
  readonly worst: Point;
  /** Closed polygon, not repeating its first point. */
  readonly outline: readonly Point[];
}
