import type { RandomStream } from "../random";
import type { ButtJoint, Face } from "../weld";
import type { Field } from "./field";
import type { FacePlan } from "./plan";
import type { TruthItem } from "./truth";

/** Everything at hand while one face is made. The fine strip carries the weld; the two sides carry only parent plate. */
export interface FaceWork {
  readonly face: Face;
  readonly joint: ButtJoint;
  readonly strip: Field;
  /** Plate B's side (y < 0) and plate A's (y > 0) outside the strip. */
  readonly sides: readonly Field[];
  readonly plan: FacePlan;
  readonly look: Look;
  /** Stream of this face; features take child streams by name. */
  readonly random: RandomStream;
  /** Outer toes of the whole weld, y mm per column of the strip; filled after the deposit. */
  readonly toeMinus: Float32Array;
  readonly toePlus: Float32Array;
  /** Edges of each run as laid, y mm per column, NaN where the run is absent. */
  readonly runMinus: Float32Array[];
  readonly runPlus: Float32Array[];
  readonly craters: Crater[];
  /** Noise fields over the strip that painting and imperfections share. */
  readonly noise: SharedNoise;
}

export interface Crater {
  readonly x: number;
  readonly y: number;
  readonly radiusX: number;
  readonly radiusY: number;
  readonly run: number;
}

export interface SharedNoise {
  blotch: Float32Array;
  blotchFine: Float32Array;
  micro: Float32Array;
  flake: Float32Array;
  patch: Float32Array;
  patchFine: Float32Array;
}

/** How this workshop and this hand look; 0..1 unless said otherwise. */
export interface Look {
  readonly heatTint: number;
  readonly brushed: number;
  readonly spatter: number;
  readonly slag: number;
  readonly rust: number;
  /** Width of the ground band beside the groove, mm. */
  readonly bandWidth: number;
  /** mm */
  readonly ripplePitch: number;
  readonly rippleHeight: number;
}

/**
 * An imperfection (or a harmless feature) on one face. The phases run for all features of a face before the next phase
 * begins: plan, then metal is laid, cut, general painting and spatter, paint, and at last measure.
 */
export interface Feature {
  readonly id: string;
  /** Edits the welding plan. */
  plan?(work: FaceWork): void;
  /** Cuts or raises the finished metal. */
  cut?(work: FaceWork): void;
  /** Colours it; heights may still be added here for globules. */
  paint?(work: FaceWork): void;
  /** What can be found, measured from the finished surface; nothing if nothing can. */
  measure?(work: FaceWork): TruthItem | null;
}
