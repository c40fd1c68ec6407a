import type { ImperfectionType } from "../../imperfections";
import type { Face, JointPosition, Process } from "../../weld";
import type { Range } from "./rows";

/** What follows from the same fault a little further on. */
interface Follower {
  readonly type: ImperfectionType;
  /** Free weld between it and what came before, mm. */
  readonly after: Range;
  /** Only in the welding direction, or to either side. */
  readonly onwards: boolean;
}

/** Faults that occur together because one cause brings them. */
export interface Chain {
  readonly name: string;
  readonly face: Face;
  readonly first: ImperfectionType;
  readonly followers: readonly Follower[];
  /** Only with these processes, in these positions, with such a joint; everywhere where nothing is said. */
  readonly processes?: readonly Process[];
  readonly positions?: readonly JointPosition[];
  readonly joint?: "wide-gap" | "stepped";
  /** Share of the faces on which it is possible and has its slots. */
  readonly share: number;
}

/**
 * Fault chains. What comes of one stop lies further on along the run here, by the separation rule: the welder who leaves one
 * crater open leaves the next one open as well. Shares and distances are common practice, no source.
 */
export const CHAINS: readonly Chain[] = [
  {
    name: "cold restart, gas after it",
    face: "cap",
    first: "poor-restart",
    followers: [{ type: "surface-pore", after: [28, 40], onwards: true }],
    share: 0.2,
  },
  {
    name: "cold restart in the root, gas after it",
    face: "root",
    first: "poor-restart",
    followers: [{ type: "surface-pore", after: [28, 40], onwards: true }],
    share: 0.2,
  },
  {
    name: "cold restart, pores after it",
    face: "cap",
    first: "poor-restart",
    followers: [
      { type: "surface-pore", after: [28, 36], onwards: true },
      { type: "surface-pore", after: [28, 36], onwards: true },
    ],
    share: 0.06,
  },
  { name: "root edge out of reach", face: "root", first: "root-fusion", followers: [], joint: "stepped", share: 0.6 },
  {
    name: "arc broken off",
    face: "cap",
    first: "crater-pipe",
    followers: [{ type: "crater-crack", after: [43, 110], onwards: false }],
    share: 0.2,
  },
  {
    name: "gap too wide",
    face: "root",
    first: "excess-penetration",
    followers: [{ type: "burn-through", after: [32, 65], onwards: false }],
    joint: "wide-gap",
    share: 0.4,
  },
  {
    name: "gas lost",
    face: "cap",
    first: "scaled-surface",
    followers: [{ type: "surface-porosity", after: [30, 50], onwards: true }],
    processes: ["135", "136"],
    share: 0.2,
  },
  {
    name: "gas lost, cluster",
    face: "cap",
    first: "scaled-surface",
    followers: [{ type: "clustered-porosity", after: [30, 50], onwards: true }],
    processes: ["135", "136"],
    share: 0.2,
  },
  {
    name: "no backing gas",
    face: "root",
    first: "scaled-surface",
    followers: [{ type: "root-porosity", after: [30, 55], onwards: false }],
    processes: ["141"],
    share: 0.2,
  },
  {
    name: "travelled too slowly",
    face: "cap",
    first: "overlap",
    followers: [{ type: "sagging", after: [30, 60], onwards: true }],
    positions: ["PC"],
    share: 0.35,
  },
];
