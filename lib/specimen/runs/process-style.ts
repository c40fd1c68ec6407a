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

/** How one process welds a butt plate. */
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
