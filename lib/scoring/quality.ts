import { imperfection, likeness } from "../imperfections";
import { PART_SHARES, PARTS, type Part } from "../results";
import type { Piece } from "./pieces";
import { earnedShare } from "./ramp";
import { KEPT_PER_EXTRA_CALL, type Target, widestGap } from "./targets";

/** One, two or three calls seen as one. Whole micrometres. */
export interface Hull {
  readonly count: number;
  readonly start: number;
  readonly end: number;
  /** Largest size written, or -1. */
  readonly size: number;
  /** Thousandths for the type of the worst-named piece. */
  readonly likeness: number;
  /** How far the piece farthest off lies beside the target. */
  readonly beside: number;
  /** Widest stretch of the target left open between the pieces. */
  readonly gap: number;
}

/** Thousandths for the type of a call held against a target. */
export function typeShare(target: Target, piece: Piece): number {
  return piece.type === null ? 0 : Math.round(1000 * likeness(target.type, piece.type));
}

/** How far a call lies beside a target, at its farthest truth: one call in the middle of two toes is beside both. */
export function besideOf(target: Target, piece: Piece): number {
  return Math.max(Math.abs(piece.across - target.acrossLow), Math.abs(piece.across - target.acrossHigh));
}

/** Hull of calls against a target. A hull is never better placed or named than its worst piece. */
export function hullOfCalls(target: Target, pieces: readonly Piece[]): Hull {
  return {
    count: pieces.length,
    start: Math.min(...pieces.map((piece) => piece.start)),
    end: Math.max(...pieces.map((piece) => piece.end)),
    size: Math.max(...pieces.map((piece) => piece.size)),
    likeness: Math.min(...pieces.map((piece) => typeShare(target, piece))),
    beside: Math.max(...pieces.map((piece) => besideOf(target, piece))),
    gap: widestGap(pieces, target.start, target.end),
  };
}

/**
 * Misalignment is in one place with everything along the weld, so only a call that names it can stand for it;
 * otherwise any false call would be found in it.
 */
function canStandFor(target: Target, hull: Hull): boolean {
  return hull.likeness > 0 || imperfection(target.type).family !== "misalignment";
}

/** How far a hull sticks out of, or lies away from, a target along the weld, µm: one formula for points and lines. */
export function stickOut(target: Target, start: number, end: number): number {
  return Math.max(0, target.start - start, end - target.end);
}

/** Place in thousandths: 0 means the calls have nothing to do with the target. */
export function placeShare(target: Target, hull: Hull): number {
  if (!canStandFor(target, hull)) return 0;
  const along = earnedShare(target.ramps.placeAlong, stickOut(target, hull.start, hull.end));
  if (along === 0) return 0;
  const across = earnedShare(target.ramps.placeAcross, hull.beside);
  const gap = earnedShare(target.ramps.gap, Math.max(target.gap, hull.gap));
  return Math.round((along * across * gap) / 1_000_000);
}

/** Thousandths earned of a part, or null where the part does not apply to the target. */
export function partShare(part: Part, target: Target, hull: Hull): number | null {
  switch (part) {
    case "found":
      return 1000;
    case "type":
      return hull.likeness;
    case "start":
      return earnedShare(target.ramps.start, Math.abs(hull.start - target.start));
    case "end":
      return target.isPoint ? null : earnedShare(target.ramps.end, Math.abs(hull.end - target.end));
    case "size":
      if (target.size < 0) return null;
      return hull.size < 0 ? 0 : earnedShare(target.ramps.size, Math.abs(hull.size - target.size));
    case "across":
      return earnedShare(target.ramps.across, hull.beside);
  }
}

/** Ten-thousandths of the worth kept by a split or merged call. */
export function keptShare(target: Target, pieceCount: number): number {
  return (target.kept * KEPT_PER_EXTRA_CALL[pieceCount - 1]) / 10_000;
}

/** What a hull is worth against a target. */
export interface Value {
  /** Thousandths. */
  readonly place: number;
  /** Thousandths of a mark earned by the parts together. */
  readonly parts: number;
  /** Thousandths of a mark of the calls' price that come back. */
  readonly back: number;
}

/**
 * Value of a hull against a target, all in whole numbers: quality in millionths is place x weighted mean of the parts,
 * parts = worth x quality x share kept, and every call gets its price back as far as the whole is in its place.
 */
export function appraise(target: Target, hull: Hull, price: number): Value {
  return valueAt(target, placeShare(target, hull), hull, price);
}

/**
 * What a hull can be worth at most once it has grown to `count` calls by calls that start no earlier: they may close
 * its gaps, reach the true end and bring the true size, but not move its start or take back what goes too far.
 */
export function ceiling(target: Target, hull: Hull, count: number, price: number): number {
  const place = placeShare(target, { ...hull, gap: 0 });
  const end = Math.max(hull.end, target.end);
  const size = Math.max(hull.size, target.size);
  const value = valueAt(target, place, { ...hull, count, end, size }, price);
  return value.parts + value.back;
}

function valueAt(target: Target, place: number, hull: Hull, price: number): Value {
  if (place === 0) return { place, parts: 0, back: 0 };
  let weights = 0;
  let sum = 0;
  for (const part of PARTS) {
    const share = partShare(part, target, hull);
    if (share === null) continue;
    weights += PART_SHARES[part];
    sum += PART_SHARES[part] * share;
  }
  const quality = Math.round((place * sum) / weights);
  const parts = Math.round((target.worth * quality * keptShare(target, hull.count)) / 10_000_000_000);
  return { place, parts, back: hull.count * Math.round((price * place) / 1000) };
}
