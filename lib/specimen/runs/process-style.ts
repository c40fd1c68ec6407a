import type { Process } from "../../weld";

export type Range = readonly [least: number, most: number];

/** Ripples on the back of a bead. */
export interface RippleHabit {
  /** Distance between the ripples of a stringer laid flat, mm. */
  readonly pitch: Range;
  /** How much further apart they lie in a weave. */
  readonly weavePitch: number;
  /** Height of a ripple, mm. */
  readonly height: Range;
  /** How alike they are, 0 irregular .. 1 stacked coins. */
  readonly evenness: number;
  /** Fine ripple on the main one, as a share of it. */
  readonly fine: number;
  /** How far chance bends a crescent, 1 normal. */
  readonly bend: number;
  /** Slow waves of the hand, as a share of a ripple. */
  readonly coarse: number;
  /** Length of a crescent as a share of the half width, and its shape: 1 a V, 2 a parabola, more a flat arc. */
  readonly tail: Range;
  readonly tailPower: Range;
}

/** Cross-section of the cap's runs. */
export interface BeadHabit {
  /** Height over the chord between the toes, mm: the run laid first, those laid on it, and one weave. */
  readonly first: Range;
  readonly next: Range;
  readonly weave: Range;
  /** Edge exponent: low is peaked with flat toes, high is flat with steep toes. */
  readonly exponent: Range;
  readonly weaveExponent: Range;
  /** How sharp a toe is in the mean, 0 blended .. 1 a line. */
  readonly toeSharpness: number;
  /** How ragged toes are, 1 as a stick electrode leaves them. */
  readonly ragged: number;
  /** Widest stringer, mm of half width; a thin plate may be closed with one weave up to the second. */
  readonly widest: number;
  readonly widestWeave: number;
}

/** What a hand and a machine do between two stops. */
export interface StopHabit {
  /** Share of runs with any stop at all. */
  readonly share: number;
  /** Weld laid without a stop, mm. */
  readonly stringer: Range;
  readonly weave: Range;
  readonly root: Range;
  /** Depth of the crater at a run's end and height of the hump at a start, mm. */
  readonly crater: Range;
  readonly hump: Range;
  /** Length over which a restart wets back over the old metal, mm. */
  readonly wetting: Range;
  /** How much wider, flatter and coarser a length gets as the electrode burns down. */
  readonly burning: Range;
}

/** The root bead that comes through. */
export interface RootHabit {
  readonly height: Range;
  readonly exponent: Range;
  /** How far it reaches over the gap's edges a side, mm, and the narrowest bead, mm of half width. */
  readonly overlap: Range;
  readonly narrowest: number;
  readonly tail: Range;
  readonly tailPower: Range;
  /** Against the cap's ripples. */
  readonly pitch: number;
  readonly ripple: number;
  readonly coarse: number;
  /** How far it follows the gap, 1 as it does under a stick electrode. */
  readonly followsGap: number;
}

/** How the edges are prepared. */
export interface Preparation {
  readonly gap: Range;
  readonly face: Range;
  readonly angle: Range;
  /** Width ground clean beside the groove, mm. */
  readonly cleaned: Range;
}

/** What flies and settles beside the weld. */
export interface Fallout {
  /** Globules beside 300 mm of cap at full spatter, their usual radius in mm and how it scatters, how bright they are. */
  readonly globules: number;
  readonly radius: number;
  readonly scatter: number;
  readonly bright: number;
  /** Mean distance from the toe, mm. */
  readonly thrown: number;
}

/** Colours that heat leaves beside the weld; 1 = as much as under a stick electrode. */
export interface HeatHabit {
  readonly reach: number;
  /** How even its colours lie along the weld, 0 torn into patches .. 1 a band. */
  readonly even: number;
  readonly burnt: number;
  readonly smoke: number;
  readonly warm: number;
  readonly blue: number;
  readonly soot: number;
  readonly dust: number;
}

/** Ranges from which the hand that welded one specimen is drawn, 0..1. */
export interface HandHabit {
  readonly steadiness: Range;
  readonly brushed: Range;
  readonly sooty: Range;
  readonly spatter: Range;
  readonly slag: Range;
  readonly heatTint: Range;
}

export interface ProcessStyle {
  readonly ripple: RippleHabit;
  readonly bead: BeadHabit;
  readonly stops: StopHabit;
  readonly root: RootHabit;
  readonly preparation: Preparation;
  readonly fallout: Fallout;
  readonly heat: HeatHabit;
  readonly hand: HandHabit;
}

/**
 * How the welding processes differ on a butt plate, but for the colours of the weld metal. Common practice in a workshop, no
 * source: what a welder or an inspector would expect of each.
 */
export const PROCESS_STYLES: Readonly<Record<Process, ProcessStyle>> = {
  "111": {
    ripple: {
      pitch: [1.1, 1.55],
      weavePitch: 1.4,
      height: [0.034, 0.05],
      evenness: 0.1,
      fine: 0.2,
      bend: 1,
      coarse: 0.38,
      tail: [0.62, 0.95],
      tailPower: [1.7, 2.3],
    },
    bead: {
      first: [1.7, 2.1],
      next: [0.95, 1.25],
      weave: [1.9, 2.4],
      exponent: [1.85, 2.25],
      weaveExponent: [2.2, 2.7],
      toeSharpness: 0.42,
      ragged: 1,
      widest: 5.6,
      widestWeave: 8.8,
    },
    stops: {
      share: 1,
      stringer: [150, 250],
      weave: [100, 175],
      root: [120, 210],
      crater: [0.3, 0.65],
      hump: [0.18, 0.42],
      wetting: [1, 2.2],
      burning: [0.03, 0.09],
    },
    root: {
      height: [0.8, 1.2],
      exponent: [2.3, 2.9],
      overlap: [0.9, 1.25],
      narrowest: 2.2,
      tail: [0.85, 1.15],
      tailPower: [1.08, 1.3],
      pitch: 1.3,
      ripple: 1.4,
      coarse: 0.55,
      followsGap: 1,
    },
    preparation: { gap: [2, 4], face: [1, 2], angle: [55, 70], cleaned: [14, 20] },
    fallout: { globules: 105, radius: 0.2, scatter: 0.5, bright: -0.05, thrown: 9 },
    heat: { reach: 1, even: 0, burnt: 1, smoke: 1, warm: 1, blue: 1, soot: 1, dust: 1 },
    hand: {
      steadiness: [0.05, 0.85],
      brushed: [0.2, 0.75],
      sooty: [0, 1],
      spatter: [0.35, 0.9],
      slag: [0.3, 0.8],
      heatTint: [0.6, 1],
    },
  },
  "135": {
    ripple: {
      pitch: [0.9, 1.25],
      weavePitch: 1.3,
      height: [0.022, 0.034],
      evenness: 0.45,
      fine: 0.1,
      bend: 0.7,
      coarse: 0.3,
      tail: [0.5, 0.75],
      tailPower: [2, 2.6],
    },
    bead: {
      first: [1.6, 2],
      next: [0.85, 1.15],
      weave: [1.7, 2.2],
      exponent: [2, 2.5],
      weaveExponent: [2.3, 2.8],
      toeSharpness: 0.34,
      ragged: 0.85,
      widest: 5.6,
      widestWeave: 8.2,
    },
    stops: {
      share: 0.35,
      stringer: [90, 260],
      weave: [90, 240],
      root: [90, 250],
      crater: [0.22, 0.45],
      hump: [0.2, 0.5],
      wetting: [0.8, 1.6],
      burning: [-0.02, 0.02],
    },
    root: {
      height: [0.55, 0.9],
      exponent: [2.6, 3.1],
      overlap: [0.9, 1.4],
      narrowest: 2.2,
      tail: [0.6, 0.9],
      tailPower: [1.5, 2],
      pitch: 1.15,
      ripple: 1.3,
      coarse: 0.45,
      followsGap: 0.8,
    },
    preparation: { gap: [1.5, 3.2], face: [0.5, 1.5], angle: [45, 60], cleaned: [14, 21] },
    fallout: { globules: 72, radius: 0.125, scatter: 0.42, bright: 0.4, thrown: 11 },
    heat: { reach: 0.92, even: 0.15, burnt: 0.75, smoke: 0.8, warm: 1, blue: 1.3, soot: 0.65, dust: 0.5 },
    hand: {
      steadiness: [0.25, 0.95],
      brushed: [0.25, 0.7],
      sooty: [0, 0.65],
      spatter: [0.3, 0.9],
      slag: [0.2, 0.8],
      heatTint: [0.6, 1],
    },
  },
  "136": {
    ripple: {
      pitch: [0.9, 1.15],
      weavePitch: 1.3,
      height: [0.017, 0.026],
      evenness: 0.4,
      fine: 0.3,
      bend: 0.75,
      coarse: 0.25,
      tail: [0.45, 0.7],
      tailPower: [2.1, 2.8],
    },
    bead: {
      first: [1.5, 1.85],
      next: [0.8, 1.05],
      weave: [1.6, 2],
      exponent: [2.1, 2.6],
      weaveExponent: [2.4, 2.9],
      toeSharpness: 0.26,
      ragged: 0.75,
      widest: 6,
      widestWeave: 9.4,
    },
    stops: {
      share: 0.35,
      stringer: [100, 260],
      weave: [90, 240],
      root: [90, 250],
      crater: [0.25, 0.5],
      hump: [0.18, 0.4],
      wetting: [1, 2],
      burning: [-0.02, 0.02],
    },
    root: {
      height: [0.65, 1.05],
      exponent: [2.5, 3],
      overlap: [1, 1.4],
      narrowest: 2.4,
      tail: [0.6, 0.9],
      tailPower: [1.5, 2.1],
      pitch: 1.15,
      ripple: 1.3,
      coarse: 0.4,
      followsGap: 0.7,
    },
    preparation: { gap: [2.5, 4.5], face: [0.5, 1.5], angle: [45, 60], cleaned: [13, 20] },
    fallout: { globules: 95, radius: 0.18, scatter: 0.5, bright: 0.1, thrown: 10 },
    heat: { reach: 1.05, even: 0, burnt: 0.85, smoke: 1, warm: 0.9, blue: 0.8, soot: 0.9, dust: 1.7 },
    hand: {
      steadiness: [0.25, 0.95],
      brushed: [0.3, 0.8],
      sooty: [0.1, 0.9],
      spatter: [0.35, 0.9],
      slag: [0.3, 0.9],
      heatTint: [0.6, 1],
    },
  },
  "141": {
    ripple: {
      pitch: [0.72, 0.98],
      weavePitch: 1.25,
      height: [0.026, 0.04],
      evenness: 0.8,
      fine: 0.03,
      bend: 0.42,
      coarse: 0.3,
      tail: [0.6, 0.85],
      tailPower: [2, 2.3],
    },
    bead: {
      first: [1.45, 1.8],
      next: [0.8, 1.05],
      weave: [1.5, 1.9],
      exponent: [1.9, 2.2],
      weaveExponent: [2.1, 2.5],
      toeSharpness: 0.2,
      ragged: 0.45,
      widest: 4.5,
      widestWeave: 7,
    },
    stops: {
      share: 0.85,
      stringer: [110, 260],
      weave: [90, 200],
      root: [90, 220],
      crater: [0.12, 0.3],
      hump: [0.06, 0.2],
      wetting: [1.6, 2.8],
      burning: [-0.03, 0.03],
    },
    root: {
      height: [0.6, 0.95],
      exponent: [2.2, 2.6],
      overlap: [0.7, 1],
      narrowest: 1.8,
      tail: [0.6, 0.85],
      tailPower: [1.8, 2.2],
      pitch: 1,
      ripple: 0.95,
      coarse: 0.3,
      followsGap: 0.5,
    },
    preparation: { gap: [1.5, 3.2], face: [0.5, 1.5], angle: [55, 70], cleaned: [19, 25] },
    fallout: { globules: 0, radius: 0.1, scatter: 0.3, bright: 0.3, thrown: 6 },
    heat: { reach: 0.5, even: 0.4, burnt: 0.3, smoke: 0.7, warm: 1.6, blue: 2.8, soot: 0, dust: 0 },
    hand: {
      steadiness: [0.4, 1],
      brushed: [0.45, 0.9],
      sooty: [0, 0.12],
      spatter: [0, 0],
      slag: [0, 0],
      heatTint: [0.7, 1],
    },
  },
};
