import type { Degrees, Mm } from "../math";
import { type FeetPlacement, feetOf, type GaugePlacement, type HookPlacement } from "./placement";

/** A flat piece of a gauge's underside: u from .. to, at `level` mm over the line of its feet. */
export interface Piece {
  readonly from: Mm;
  readonly to: Mm;
  readonly level: Mm;
  readonly part: "foot" | "body";
}

/** Underside of the bar between and beside the feet, over the line of the feet, mm: room for a cap. */
export const BAR_LEVEL: Mm = 8;
/** Half the width of the plate that carries the scale and guides the moving part, mm. */
export const GUIDE_HALF: Mm = 9.6;
/** A depth gauge with both feet on one side has all of its body there, so that its rod comes close to an upright plate, mm. */
const SLIM: Mm = 1.8;

/** The fillet gauge's measures, mm: along the plate from the nose's face, and over the sole. */
export const LEG_BODY = {
  sole: { from: 23, to: 35 },
  nose: { from: 22, to: 26 },
  /** The slide's knife edge runs this far over the sole, rounded so much, and its bevel rises at so many degrees; it rides over what stands no higher than `ridden`. */
  edge: { level: 0.05, ridden: 0.15, radius: 0.05, height: 3, bevel: 35 as Degrees },
} as const;

/** The shoulders reach along both plates from .. to, mm from the corner. */
export const SHOULDERS = { from: 21, to: 31 } as const;

/** What of a gauge can come to lie on the metal. */
export function undersideOf(placement: FeetPlacement | HookPlacement): readonly Piece[] {
  const feet = feetOf(placement).map((foot): Piece => ({ ...foot, level: 0, part: "foot" }));
  const ends = feet.flatMap(({ from, to }) => [from, to]);
  const isSlim = placement.kind === "depth-gauge" && placement.stance === "one-side";
  const bar: Piece = {
    from: Math.min(isSlim ? -SLIM : -GUIDE_HALF, ...ends),
    to: Math.max(GUIDE_HALF, ...ends),
    level: BAR_LEVEL,
    part: "body",
  };
  return [...feet, bar];
}

/** Where along u the hand presses: midway between the feet. */
export function pressedAt(placement: FeetPlacement | HookPlacement): Mm {
  const feet = feetOf(placement);
  return (feet[0].from + feet[feet.length - 1].to) / 2;
}

/** Reading per mm of height over the seated reference: depths are read downward. */
export const senseOf = (placement: GaugePlacement): 1 | -1 =>
  placement.kind === "depth-gauge" || placement.kind === "hook-gauge" ? -1 : 1;
