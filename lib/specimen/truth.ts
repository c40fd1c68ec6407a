import type { Clutter, ImperfectionType } from "../imperfections";
import type { ButtJoint, Dimension, Face } from "../weld";

/** A place on a face: x mm from the datum, y mm across (positive towards plate A). */
export type Point = readonly [x: number, y: number];

/** One imperfection as measured from the finished surface. */
export interface TruthItem {
  /** Unique within the specimen, e.g. "cap-3". */
  readonly id: string;
  readonly face: Face;
  readonly type: ImperfectionType;
  /** Extent along the weld, mm from the datum. For a point (see the catalogue) start = end = its middle. */
  readonly start: number;
  readonly end: number;
  /** Middle of the imperfection across the weld, mm. */
  readonly across: number;
  /** Depth, height or diameter in mm, as the catalogue says for the type; null where nobody measures one. */
  readonly size: number | null;
  /** Largest width across, mm, where it means something. */
  readonly width: number | null;
  /** Where the largest size was measured. */
  readonly worst: Point;
  /** Closed outline for drawing, at least 3 points. */
  readonly outline: readonly Point[];
  /** Visible but below the recordable size, or harmless: calling it costs nothing and earns nothing. */
  readonly neutral: boolean;
}

/** Where something harmless lies that tempts to a false call; mm as in `TruthItem`. */
export interface ClutterItem {
  readonly id: string;
  readonly face: Face;
  readonly kind: Clutter;
  readonly start: number;
  readonly end: number;
  readonly across: number;
  readonly outline: readonly Point[];
}

/** One dimension of a piece, measured from its finished surfaces; values in the dimension's own unit, places in mm. */
export interface DimensionTruth {
  readonly dimension: Dimension;
  /** The value; where it varies along the weld, the largest. */
  readonly value: number;
  /** Where the largest is; null where it is the same everywhere. */
  readonly at: number | null;
  /** What it is from place to place, null where it cannot be measured; null where it is the same everywhere. */
  readonly along: {
    readonly from: number;
    readonly step: number;
    readonly values: readonly (number | null)[];
  } | null;
}

/** Everything there is to find on one specimen. */
export interface Truth {
  readonly version: 1;
  /** Generator version that made the surfaces. */
  readonly generator: string;
  readonly joint: ButtJoint;
  readonly items: readonly TruthItem[];
  readonly clutter: readonly ClutterItem[];
  readonly dimensions: readonly DimensionTruth[];
}
