/**
 * The welding plan of one face: what the welder's hand does along the joint, before any metal is laid. All arrays have
 * one value per column of the strip grid. Imperfections edit the plan; the deposit then makes their shape by itself.
 */
export interface FacePlan {
  /** Half opening of the joint at this face, mm: the groove's on the cap, half the root gap (widened by the worn edges) on the root. */
  groove: number;
  /** Fall of the groove's wall per mm towards the centre. */
  wallSlope: number;
  /** Level of what lies in the joint before these runs, mm (negative: below the parent surface). */
  readonly fill: Float32Array;
  readonly runs: RunPlan[];
}

export interface RunPlan {
  readonly seed: number;
  /** Welding direction along x. */
  readonly direction: 1 | -1;
  /** Centre line y, half width, height over the chord between the toes; mm. */
  readonly centre: Float32Array;
  readonly halfWidth: Float32Array;
  readonly height: Float32Array;
  /** Edge exponent of the cross-section towards y < centre and y > centre: 2 round, 4 and more a rolled edge. */
  readonly exponentMinus: Float32Array;
  readonly exponentPlus: Float32Array;
  /** Length of the pool's tail as a share of the half width. */
  readonly tail: Float32Array;
  /** Ripple amplitude, mm. */
  readonly ripple: Float32Array;
  /** Toe raggedness, 1 normal, per side. */
  readonly raggedMinus: Float32Array;
  readonly raggedPlus: Float32Array;
  /** Crescent shape: 1 a V, 2 a parabola. */
  readonly tailPower: number;
  /** Mean ripple pitch, mm. */
  readonly pitch: number;
  readonly coarse: number;
  readonly smooth: number;
  /** How alike the ripples are, 0 as a nervous hand leaves them .. 1 like stacked coins. */
  readonly evenness: number;
  /** Height of the fine ripple that rides on the main one, as a share of it. */
  readonly fine: number;
  /** How far chance bends a crescent, 1 normal. */
  readonly bend: number;
  /** How far a toe swells out where the electrode dwelt, mm. */
  readonly dwell: number;
  /** Where across the crown lies, as a share of the half width: negative towards plate B, 0 in the middle. */
  readonly lean: number;
  /** How much further the pool runs ahead per mm towards plate A. */
  readonly lag: number;
  /** True for one wide weave, which ripples and bridges differently. */
  readonly weave: boolean;
  /** Electrode lengths in the order they were laid. */
  segments: Segment[];
}

/** One electrode's length of weld, between a and b (mm, a < b whatever the direction). */
export interface Segment {
  a: number;
  b: number;
  /** Extra height just after the start, mm, and the length over which it decays. */
  hump: number;
  humpLength: number;
  /** Depth of the crater left at the end, mm. */
  crater: number;
  /** Sideways shift and extra half width at the start, mm. */
  shift: number;
  widen: number;
  /** Length over which a restart wets back over the old metal, mm; 0 for a first start. */
  wetting: number;
  /** Rear radius of a restart, mm, and the seed of its ragged lap. */
  rearRadius?: number;
  lapSeed?: number;
  /** How much further ahead the rear edge of a restart lies at the toe towards plate A than in the middle, mm, and how ragged it is, 1 normal. */
  lapSlant?: number;
  lapRagged?: number;
  /** Share of its width that a restart lacks at first, and the length over which it swells to the full one, mm. */
  narrow?: number;
  swell?: number;
  /** How much further ahead the pool ran per mm towards plate A at the start: the ripples lie aslant. */
  cant?: number;
  pitchFactor?: number;
  rippleFactor?: number;
}
