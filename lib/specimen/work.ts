import type { Clutter, ImperfectionType } from "../imperfections";
import type { RandomStream } from "../random";
import type { ButtJoint, Face, JointPosition } from "../weld";
import type { Field } from "./field";
import type { PlateSetting } from "./parent";
import type { FacePlan } from "./plan";
import type { ClutterItem, TruthItem } from "./truth";

/** The joint that is welded: a butt joint, or a fillet laid out flat as the groove between its two plates. */
export type WorkedJoint = Omit<ButtJoint, "position"> & { readonly position: JointPosition };

/** Everything at hand while one face is made. The fine strip carries the weld; the two sides carry only parent plate. */
export interface FaceWork {
  readonly face: Face;
  readonly joint: WorkedJoint;
  readonly plates: PlateSetting;
  readonly strip: Field;
  /** Plate B's side (y < 0) and plate A's (y > 0) outside the strip. */
  readonly sides: readonly Field[];
  readonly plan: FacePlan;
  readonly look: Look;
  /** Stream of this face; features take child streams by name. */
  readonly random: RandomStream;
  /** Stream of what both faces have from one piece: its children give the same numbers on either. */
  readonly bothFaces: RandomStream;
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

/** Skin of the plates as they came to be welded. */
export type PlateState = "mill-scale" | "blasted" | "pickled";

/** How this workshop and this hand look; 0..1 unless said otherwise. */
export interface Look {
  readonly heatTint: number;
  readonly brushed: number;
  /** Soot and oxide left on the weld. */
  readonly sooty: number;
  readonly spatter: number;
  readonly slag: number;
  readonly rust: number;
  readonly plate: PlateState;
  /** How light the plates are against usual ones, about 0.8 to 1.2, and their tinge: -1 brownish .. 1 bluish. */
  readonly plateLight: number;
  readonly plateBlue: number;
  /** How the plates were cleaned beside the joint: ground bare, or only wire-brushed. */
  readonly cleaning: "ground" | "brushed";
  /** Width of the ground or brushed band beside the groove, mm. */
  readonly bandWidth: number;
  /** Of a stringer laid flat, mm. */
  readonly ripplePitch: number;
  readonly rippleHeight: number;
  /** 0 a nervous hand .. 1 a steady one. */
  readonly steadiness: number;
  /** Wavelength of the hand's waver against the mean, about 0.7 to 1.5. */
  readonly tempo: number;
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
  /** What it left on the surface that is no imperfection, where it really lies; nothing if nothing can be seen of it. */
  clutter?(work: FaceWork): ClutterItem | null;
}

/**
 * Harmless features that look like an imperfection in small: the truth lists them as neutral items of that type, and a call
 * on one costs nothing and earns nothing.
 */
export const HARMLESS = ["sound-stop", "dressed-stop", "shallow-undercut", "light-grinding", "fine-pore"] as const;
export type Harmless = (typeof HARMLESS)[number];

/** What the recipe asks of one feature. What comes out is measured and differs: the request is never shown to anybody. */
export interface FeatureRequest {
  readonly id: string;
  readonly type: ImperfectionType | Harmless | Clutter;
  /** Start along the weld for lines, middle for points, mm from the datum. */
  readonly x: number;
  /** Asked length along the weld, mm (0 for points). */
  readonly length: number;
  /** Which toe or plate: the sign of y. */
  readonly side: 1 | -1;
  /** Asked depth, height or diameter, mm. */
  readonly severity: number;
  /** One of the type's own shapes; each builder says which it knows. */
  readonly variant?: string;
  /** Number of the run it belongs to, from plate B's side; the last one if absent. */
  readonly run?: number;
  /** Where across, mm, for what lies on the plate beside the weld. */
  readonly y?: number;
}

export type FeatureBuilder = (request: FeatureRequest, random: RandomStream) => Feature;
