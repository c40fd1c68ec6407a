import type { Piece } from "./pieces";
import { appraise, besideOf, type Hull, placeShare, typeShare } from "./quality";
import type { Target } from "./targets";

/** A call held against one target, with all that a hull needs of it. */
export interface Placed {
  /** In the section's list of pieces. */
  readonly position: number;
  readonly hull: Hull;
  /** Thousandths of a mark that it is worth by itself. */
  readonly value: number;
}

/** The calls that are in a target's place at all, in the section's order. */
export function piecesInPlace(target: Target, pieces: readonly Piece[], price: number): Placed[] {
  const placed: Placed[] = [];
  pieces.forEach((piece, position) => {
    const { start, end, size } = piece;
    const beside = besideOf(target, piece);
    const hull = { count: 1, start, end, size, likeness: typeShare(target, piece), beside, gap: 0 };
    if (placeShare(target, hull) > 0) placed.push({ position, hull, value: hullValue(target, hull, price) });
  });
  return placed;
}

/** What the best structure counts: what the parts earn and what comes back of the price. */
export function hullValue(target: Target, hull: Hull, price: number): number {
  const value = appraise(target, hull, price);
  return value.parts + value.back;
}

/** A hull with one more call, which starts no earlier than those before it. */
export function joinedHull(target: Target, hull: Hull, piece: Hull): Hull {
  const opened = Math.min(piece.start, target.end) - Math.max(hull.end, target.start);
  return {
    count: hull.count + 1,
    start: hull.start,
    end: Math.max(hull.end, piece.end),
    size: Math.max(hull.size, piece.size),
    likeness: Math.min(hull.likeness, piece.likeness),
    beside: Math.max(hull.beside, piece.beside),
    gap: Math.max(hull.gap, opened),
  };
}
