import type { Process } from "../../weld";
import type { Range } from "../runs";

/** What a harmless small mark on weld metal is made of. */
export const SPECK_KINDS = ["oxide", "glass", "crumb", "pit", "fleck", "spot"] as const;
export type SpeckKind = (typeof SPECK_KINDS)[number];

/** How much harmless a face of a process shows; numbers a face of 300 mm. */
export interface BlemishHabit {
  readonly specks: Range;
  /** How often each kind is met, against the others. */
  readonly kinds: Readonly<Record<Exclude<SpeckKind, "spot">, number>>;
  /** Dark flat spots as large as a pore. */
  readonly spots: Range;
  /** Loose groups of specks. */
  readonly groups: Range;
  /** Tight dark stretches along one toe. */
  readonly darkToes: Range;
  /** Depth of their crease, mm. */
  readonly toeCrease: Range;
  /** Shares of the valleys between runs that are dark and narrow, and that are open and bright. */
  readonly darkValley: number;
  readonly openValley: number;
}

/** How dark the oxide in a tight toe is: slag and fume are burnt in under flux, pure gas leaves a grey breath. Common practice, no source. */
export const TOE_OXIDE: Readonly<Record<Process, number>> = { "111": 1, "135": 0.88, "136": 0.95, "141": 0.5 };

/** What sound welds of each process have on them that is no imperfection. Common practice, no source. */
export const BLEMISH_HABITS: Readonly<Record<Process, BlemishHabit>> = {
  "111": {
    specks: [60, 115],
    kinds: { oxide: 0.34, glass: 0.08, crumb: 0.3, pit: 0.18, fleck: 0.1 },
    spots: [1, 3],
    groups: [2, 4],
    darkToes: [3, 6],
    toeCrease: [0.025, 0.05],
    darkValley: 0.4,
    openValley: 0.25,
  },
  "135": {
    specks: [45, 105],
    kinds: { oxide: 0.34, glass: 0.2, crumb: 0.1, pit: 0.2, fleck: 0.16 },
    spots: [1, 2],
    groups: [1, 3],
    darkToes: [2, 5],
    toeCrease: [0.02, 0.045],
    darkValley: 0.34,
    openValley: 0.3,
  },
  "136": {
    specks: [50, 110],
    kinds: { oxide: 0.26, glass: 0.3, crumb: 0.16, pit: 0.16, fleck: 0.12 },
    spots: [1, 3],
    groups: [2, 4],
    darkToes: [2, 5],
    toeCrease: [0.02, 0.045],
    darkValley: 0.36,
    openValley: 0.28,
  },
  "141": {
    specks: [42, 80],
    kinds: { oxide: 0.5, glass: 0, crumb: 0, pit: 0.28, fleck: 0.22 },
    spots: [1, 2],
    groups: [1, 3],
    darkToes: [2, 4],
    toeCrease: [0.02, 0.035],
    darkValley: 0.28,
    openValley: 0.34,
  },
};
