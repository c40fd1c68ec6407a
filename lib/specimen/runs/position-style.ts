import type { JointPosition } from "../../weld";

/** What gravity and the reach of the hand change in a position; factors are against flat welding. */
export interface PositionStyle {
  readonly pitch: number;
  readonly ripple: number;
  readonly height: { readonly stringer: number; readonly weave: number };
  /** Added to the edge exponent of a stringer and of a weave, and towards the lower (y < 0) and the upper toe. */
  readonly exponent: { readonly stringer: number; readonly weave: number; readonly low: number; readonly high: number };
  /** Swelling of the toes where the electrode dwells, mm. */
  readonly dwell: { readonly stringer: number; readonly weave: number };
  readonly tail: { readonly stringer: number; readonly weave: number };
  /** Where the crown lies, as a share of the half width: below 0 it sags towards plate B. */
  readonly lean: number;
  /** How far the pool hangs behind at the lower toe, mm per mm. */
  readonly lag: number;
  /** Added to the sharpness of the lower and the upper toe. */
  readonly sharpness: { readonly low: number; readonly high: number };
  readonly spatter: number;
  /** Height of the root bead against the process's own, and the lowest it gets, mm. */
  readonly root: { readonly height: number; readonly least: number; readonly exponent: number };
  /** How unsteady a hand gets here. */
  readonly tremble: number;
  /** Share of caps closed with one weave where the plate allows it; plates and caps up to which it does, mm. */
  readonly weave: { readonly share: number; readonly thickness: number; readonly half: number };
  /** Widest stringer against the process's own. */
  readonly widest: number;
  /** Always welded towards the far end: upwards. */
  readonly climbs: boolean;
}

/** Welding positions. Common practice, no source. */
export const POSITION_STYLES: Readonly<Record<JointPosition, PositionStyle>> = {
  PA: {
    pitch: 1,
    ripple: 1,
    height: { stringer: 1, weave: 1 },
    exponent: { stringer: 0, weave: 0, low: 0, high: 0 },
    dwell: { stringer: 0.085, weave: 0.22 },
    tail: { stringer: 1, weave: 0.5 },
    lean: 0,
    lag: 0,
    sharpness: { low: 0, high: 0 },
    spatter: 1,
    root: { height: 1.15, least: 0.5, exponent: 0 },
    tremble: 1,
    weave: { share: 0.6, thickness: 10.5, half: 1 },
    widest: 1,
    climbs: false,
  },
  // a fillet on a level plate: the pool hangs on the standing plate, is sharp up there and runs out below
  PB: {
    pitch: 0.97,
    ripple: 1,
    height: { stringer: 1, weave: 1 },
    exponent: { stringer: 0, weave: 0, low: 0.35, high: -0.2 },
    dwell: { stringer: 0.07, weave: 0.12 },
    tail: { stringer: 0.95, weave: 0.5 },
    lean: -0.1,
    lag: 0.14,
    sharpness: { low: -0.1, high: 0.2 },
    spatter: 1,
    root: { height: 1, least: 0.4, exponent: 0 },
    tremble: 1,
    weave: { share: 0, thickness: 0, half: 0 },
    widest: 0.9,
    climbs: false,
  },
  PC: {
    pitch: 0.95,
    ripple: 0.95,
    height: { stringer: 1, weave: 1 },
    exponent: { stringer: 0, weave: 0, low: 0.75, high: -0.3 },
    dwell: { stringer: 0.06, weave: 0.06 },
    tail: { stringer: 0.9, weave: 0.4 },
    lean: -0.24,
    lag: 0.16,
    sharpness: { low: -0.25, high: 0.28 },
    spatter: 1.05,
    root: { height: 1, least: 0.45, exponent: 0 },
    tremble: 1.05,
    weave: { share: 0, thickness: 0, half: 0 },
    widest: 0.84,
    climbs: false,
  },
  PF: {
    pitch: 1.24,
    ripple: 1.4,
    height: { stringer: 0.95, weave: 0.94 },
    exponent: { stringer: 0.2, weave: 0.25, low: 0, high: 0 },
    dwell: { stringer: 0.2, weave: 0.42 },
    tail: { stringer: 0.7, weave: 0.44 },
    lean: 0,
    lag: 0,
    sharpness: { low: 0.05, high: 0.05 },
    spatter: 1.1,
    root: { height: 0.8, least: 0.3, exponent: 0.2 },
    tremble: 1.15,
    weave: { share: 0.88, thickness: 16.5, half: 1.18 },
    widest: 1.12,
    climbs: true,
  },
  PE: {
    pitch: 0.97,
    ripple: 1.3,
    height: { stringer: 1.1, weave: 1.02 },
    exponent: { stringer: -0.25, weave: -0.25, low: 0, high: 0 },
    dwell: { stringer: 0.12, weave: 0.26 },
    tail: { stringer: 0.85, weave: 0.5 },
    lean: 0,
    lag: 0,
    sharpness: { low: 0.08, high: 0.08 },
    spatter: 1.45,
    root: { height: 0.27, least: 0.04, exponent: 0.2 },
    tremble: 1.3,
    weave: { share: 0.35, thickness: 8.5, half: 0.85 },
    widest: 0.86,
    climbs: false,
  },
};
