import type { Clutter, ImperfectionType } from "../imperfections";
import type { ButtJoint, Dimension, FilletJoint, Stated, SurfaceFace } from "../weld";

/** A place on a face: x mm from the datum, y mm across (positive towards plate A, or towards a fillet's base plate). */
export type Point = readonly [x: number, y: number];

/** One imperfection as measured from the finished surface. */
export interface TruthItem {
  /** Unique within the specimen, e.g. "cap-3". */
  readonly id: string;
  readonly face: SurfaceFace;
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
  readonly face: SurfaceFace;
  readonly kind: Clutter;
  readonly start: number;
  readonly end: number;
  readonly across: number;
  readonly outline: readonly Point[];
}

/** One dimension of a piece, measured from its finished surfaces; values in the dimension's own unit, places in mm. */
export interface DimensionTruth {
  readonly dimension: Dimension;
  /** Where it is asked for, 1 at the datum end; null where the whole weld is meant. */
  readonly station: number | null;
  /** The value; where it varies along the weld, the largest or the least, as the dimension is taken. */
  readonly value: number;
  /** Where that is; null where it is the same everywhere. */
  readonly at: number | null;
  /** What it is from place to place, null where it cannot be measured; null at a station, and where it is the same everywhere. */
  readonly along: {
    readonly from: number;
    readonly step: number;
    readonly values: readonly (number | null)[];
  } | null;
}

/** What is right to state of a piece. */
export interface StatementTruth {
  readonly statement: Stated["statement"];
  /** One, or two where the value lies too near the limit between them to tell them apart. */
  readonly right: readonly Stated["answer"][];
  /** What decides, as measured from the finished surface, and the limit that it is held against; mm. */
  readonly value: number;
  readonly limit: number;
}

interface CommonTruth {
  readonly version: 1;
  /** Generator version that made the surfaces. */
  readonly generator: string;
  readonly items: readonly TruthItem[];
  readonly clutter: readonly ClutterItem[];
  readonly dimensions: readonly DimensionTruth[];
  readonly statements: readonly StatementTruth[];
}

export interface ButtTruth extends CommonTruth {
  readonly joint: ButtJoint;
}

/** Gap under the standing plate as a feeler finds it at both ends of the joint, mm. */
export interface MeasuredGap {
  readonly datum: number;
  readonly farEnd: number;
}

export interface FilletTruth extends CommonTruth {
  readonly joint: FilletJoint;
  /** Where legs and throat are to be measured, mm from the datum, station 1 first. */
  readonly stations: readonly number[];
  readonly gap: MeasuredGap;
}

/** Everything there is to find, to measure and to state on one specimen; `joint.kind` says which. */
export type Truth = ButtTruth | FilletTruth;

export const isFilletTruth = (truth: Truth): truth is FilletTruth => truth.joint.kind === "fillet";
