import {
  feetOf,
  GAUGES,
  type GaugePlacement,
  type Heights,
  offSquare,
  placeOn,
  type Refusal,
  type RefusalCode,
  type Standing,
  setDown,
} from "../../gauges";
import type { Degrees, Mm } from "../../math";
import { STEADY } from "../steady";
import { heightsOfWork, middleOfUndercut, type SeatWork } from "./work";

/** What can be wrong with a seat, besides that the gauge refuses to stand. */
export const SEAT_FAULTS = [
  "beside-place",
  "not-square",
  "foot-on-spatter",
  "foot-on-weld",
  "bar-on-metal",
  "tip-on-spatter",
  "tip-on-weld",
  "on-lower-plate",
  "across-bend",
  "foot-over-undercut",
  "tip-off-crown",
  "tip-off-undercut",
] as const;
export type SeatFault = (typeof SEAT_FAULTS)[number];

export const SEAT_FAULT_WORDS: Readonly<Record<SeatFault, string>> = {
  "beside-place": "The moving part stands beside the place that was asked for.",
  "not-square": "The gauge is not square to the weld: turn it.",
  "foot-on-spatter": "A foot stands on spatter: move the gauge, or set its feet, so that they rest on clean plate.",
  "foot-on-weld": "A foot stands on the weld: feet belong on the plate, clear of the toe.",
  "bar-on-metal": "The bar between the feet lies on metal, so that a foot hangs in the air.",
  "tip-on-spatter": "The moving part has come down on spatter.",
  "tip-on-weld": "The slide’s foot stands on the weld: it belongs on the plate beside it.",
  "on-lower-plate": "The sole stands on the lower plate: it belongs on the higher one, so that the slide reaches down.",
  "across-bend":
    "The plates are bent at the weld, and the feet stand on both of them, far out: the line of the feet lies lower than the plate at the toe. Set both feet on one side.",
  "foot-over-undercut": "A foot stands over the undercut and dips into it.",
  "tip-off-crown": "The slide does not stand on the crown of the cap.",
  "tip-off-undercut": "The point misses the deepest of the undercut.",
};

/** What a seat is judged by. */
export interface SeatGoal {
  readonly kind: GaugePlacement["kind"] & ("height-gauge" | "depth-gauge" | "hook-gauge");
  readonly work: SeatWork;
  /** Place along the weld, mm. */
  readonly station: Mm;
  /** What the gauge shows there when it is seated right, mm. */
  readonly right: Mm;
}

export interface SeatVerdict {
  readonly isRight: boolean;
  readonly refusal: RefusalCode | null;
  readonly faults: readonly SeatFault[];
  /** What it shows as it stands, mm; null where it cannot be read. */
  readonly reads: Mm | null;
  /** `reads` less what is right, mm. */
  readonly out: Mm | null;
}

/** What a seat may be out: one and a half steps of the scale. Common practice, no source. */
export const SEAT_TOLERANCE: Mm = 0.15;
/** Beside the station by no more than this, mm; off square by no more than that. Common practice, no source. */
const MOST_BESIDE: Mm = 1;
const MOST_OFF_SQUARE: Degrees = 5;
/** Spatter that lifts by less is not felt, mm. */
const FELT: Mm = 0.03;
/** A place on the weld is told from its toe by this, mm. */
const INSIDE_TOE: Mm = 0.3;
/** How far the slide may stand from the crown, and the point from the middle of the undercut, mm. */
const OFF_CROWN: Mm = 1.5;
const OFF_UNDERCUT: Mm = 0.2;

/** Sets the gauge down without the hand's own error and says what is wrong with how it stands. */
export function judgeSeat(goal: SeatGoal, placement: GaugePlacement): SeatVerdict {
  const heights = heightsOfWork(goal.work, true);
  const standing = setDown(heights, placement, STEADY);
  const reads = standing.ok ? standing.exact : null;
  const out = reads === null ? null : reads - goal.right;
  const isOut = out === null || Math.abs(out) > SEAT_TOLERANCE;
  const seen: Seen = { goal, placement, standing, heights, clean: heightsOfWork(goal.work, false) };
  const faults = SEAT_FAULTS.filter((fault) => {
    const { matters, isThere } = FAULTS[fault];
    return (matters === "always" || isOut) && isThere(seen);
  });
  const refusal = standing.ok ? null : standing.code;
  return { isRight: refusal === null && faults.length === 0 && !isOut, refusal, faults, reads, out };
}

interface Seen {
  readonly goal: SeatGoal;
  readonly placement: GaugePlacement;
  readonly standing: Standing | Refusal;
  readonly heights: Heights;
  readonly clean: Heights;
}

interface FaultRow {
  /** A fault of itself, or only where the reading is out. */
  readonly matters: "always" | "when-out";
  readonly isThere: (seen: Seen) => boolean;
}

const FAULTS: Readonly<Record<SeatFault, FaultRow>> = {
  "beside-place": {
    matters: "always",
    isThere: ({ goal, placement }) => Math.abs(placement.x - goal.station) > MOST_BESIDE + 1e-9,
  },
  "not-square": { matters: "always", isThere: ({ placement }) => offSquare(placement) > MOST_OFF_SQUARE + 1e-9 },
  "foot-on-spatter": {
    matters: "always",
    isThere: (seen) => restingPlaces(seen, "foot").some((u) => liftedAt(seen, u) > FELT),
  },
  "foot-on-weld": {
    matters: "always",
    isThere: (seen) => restingPlaces(seen, "foot").some((u) => liftedAt(seen, u) <= FELT && isOnWeld(seen, u)),
  },
  "bar-on-metal": { matters: "always", isThere: (seen) => restingPlaces(seen, "body").length > 0 },
  "tip-on-spatter": { matters: "always", isThere: (seen) => seen.standing.ok && liftedAt(seen, 0) > FELT },
  "tip-on-weld": {
    matters: "always",
    isThere: (seen) => seen.goal.kind === "hook-gauge" && isOnWeld(seen, 0),
  },
  "on-lower-plate": {
    matters: "when-out",
    isThere: ({ goal, placement }) =>
      goal.kind === "hook-gauge" && sidesOfFeet(placement).some((side) => side * goal.work.drop < 0),
  },
  "across-bend": {
    matters: "when-out",
    isThere: ({ goal, placement }) => {
      const sides = sidesOfFeet(placement);
      return goal.work.bend > 0 && sides.includes(1) && sides.includes(-1);
    },
  },
  "foot-over-undercut": {
    matters: "when-out",
    isThere: ({ goal: { work }, placement }) => {
      const middle = middleOfUndercut(work);
      return feetOf(placement).some(({ from, to }) => {
        const [a, b] = [placeOn(placement, from).y, placeOn(placement, to).y];
        return work.undercut !== null && Math.min(a, b) < middle && middle < Math.max(a, b);
      });
    },
  },
  "tip-off-crown": {
    matters: "when-out",
    isThere: ({ goal, placement }) => goal.kind === "height-gauge" && Math.abs(placement.y) > OFF_CROWN,
  },
  "tip-off-undercut": {
    matters: "when-out",
    isThere: ({ goal, placement }) =>
      goal.kind === "depth-gauge" && Math.abs(placement.y - middleOfUndercut(goal.work)) > OFF_UNDERCUT,
  },
};

/** On which side of the centre line each foot stands: 1 on plate A, -1 on plate B. */
const sidesOfFeet = (placement: GaugePlacement): readonly number[] =>
  feetOf(placement).map(({ from, to }) => Math.sign(placeOn(placement, (from + to) / 2).y));

/** Where along the blade the gauge rests with one of its parts, mm. */
const restingPlaces = ({ standing }: Seen, part: "foot" | "body"): readonly Mm[] =>
  standing.seat?.contacts.flatMap((contact) => (contact.part === part ? [contact.u] : [])) ?? [];

const isOnWeld = ({ goal, placement }: Seen, u: Mm): boolean =>
  Math.abs(placeOn(placement, u).y) < goal.work.half - INSIDE_TOE;

/** How much higher the metal stands under the blade at u than it would without spatter, mm. */
function liftedAt({ placement, heights, clean }: Seen, u: Mm): Mm {
  const half = GAUGES[placement.kind].thickness / 2;
  const highest = (field: Heights): Mm => {
    let best = Number.NEGATIVE_INFINITY;
    for (let along = u - 0.2; along <= u + 0.2; along += 0.1) {
      for (let aside = -half; aside <= half; aside += 0.1) {
        const { x, y } = placeOn(placement, along, aside);
        best = Math.max(best, field.heightAt(x, y));
      }
    }
    return best;
  };
  return highest(heights) - highest(clean);
}
