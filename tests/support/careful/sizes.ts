import type { FeetPlacement, GaugePlacement } from "../../../lib/gauges";
import { imperfection } from "../../../lib/imperfections";
import type { TruthItem } from "../../../lib/specimen";
import { mouthSeen } from "./eye";
import { type Hand, stepsFrom } from "./hand";

/** Feet so far outside the toes, mm, measured to a foot's middle: right beside the weld, so that bent plates hardly count. */
const BESIDE_TOE = 1.8;
const LEAST_FOOT = 3;
const LEAST_SPACING = 10;

/** A gauge across the weld with a foot beside either toe. */
export function acrossWeld(
  kind: FeetPlacement["kind"],
  place: { x: number; y: number },
  [low, high]: readonly [number, number],
): FeetPlacement {
  const near = Math.max(LEAST_FOOT, place.y - low + BESIDE_TOE);
  const far = Math.max(LEAST_FOOT, high - place.y + BESIDE_TOE, LEAST_SPACING - near);
  return { kind, stance: "straddling", ...place, turn: 90, near, spacing: near + far };
}

/** Feet on both sides, `half` mm from the place each, in a direction. */
export const bothSides = (
  kind: FeetPlacement["kind"],
  place: { x: number; y: number },
  turn: number,
  half: number,
): FeetPlacement => ({ kind, stance: "straddling", ...place, turn, near: half, spacing: 2 * half });

/** Places round one, in fine steps. */
const placesRound = (x: number, y: number, dxs: readonly number[], dys: readonly number[]) =>
  dxs.flatMap((dx) => dys.map((dy) => ({ x: x + dx, y: y + dy })));

/** Round a worst place, for the point of a depth gauge. */
export const finelyRound = (x: number, y: number) =>
  placesRound(x, y, stepsFrom(-1, 1, 0.5), stepsFrom(-0.75, 0.75, 0.25));

export const deepest = (hand: Hand, placements: readonly GaugePlacement[]): number =>
  hand.furthest(placements, "most", 4).value;

/** Diameter of a pore or a pipe, of several the worst, by the rule under the lens. */
export function diameterOf(hand: Hand, { type, start, end, across, worst }: TruthItem): number {
  const isOne = imperfection(type).extent === "point";
  const [x, y] = isOne ? [(start + end) / 2, across] : worst;
  const half = mouthSeen(hand.heights, x, y) / 2;
  return hand.rule({ x: x - half, y }, { x: x + half, y }, 9);
}

/** A restart's feet stand so far before and behind it on the sound run, mm. */
const SOUND_RUN = { near: 14, far: 22 };
const NEAR_RESTART = stepsFrom(-2, 2, 0.5);

/** How far a restart stands over its run, with the gauge along the run; where no lump is worth recording, how deep it lies under it. */
export function restartAt(hand: Hand, x: number, y: number): number {
  const { x0, x1 } = hand.heights.extent;
  const levels = [-SOUND_RUN.far, -SOUND_RUN.near, SOUND_RUN.near, SOUND_RUN.far].map((dx) => x + dx);
  const isSound = (at: number) => at > x0 + 8 && at < x1 - 8;
  const along = (kind: FeetPlacement["kind"], place: { x: number; y: number }): FeetPlacement =>
    levels.every(isSound)
      ? bothSides(kind, place, 0, 18)
      : { kind, stance: "one-side", ...place, turn: x < (x0 + x1) / 2 ? 0 : 180, near: 14, spacing: 14 };
  const humps = NEAR_RESTART.flatMap((dx) =>
    [-1.2, 0, 1.2].map((dy) => along("height-gauge", { x: x + dx, y: y + dy })),
  );
  const height = hand.furthest(humps, "most", 4).value;
  if (height >= imperfection("poor-restart").recordedFrom) return height;
  // a hollow is as deep as the highest metal across it lets one see
  const hollows = NEAR_RESTART.map((dx) => {
    const across = [-1.2, -0.6, 0, 0.6, 1.2].map((dy) => along("depth-gauge", { x: x + dx, y: y + dy }));
    return hand.furthest(across, "least", 1).value;
  }).filter((depth) => !Number.isNaN(depth));
  return Math.max(...hollows);
}
