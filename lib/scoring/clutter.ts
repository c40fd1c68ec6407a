import { clamp } from "../math";
import type { ClutterItem } from "../specimen";
import { compareText, type Piece } from "./pieces";
import { toMicrometres } from "./ramp";

/** A call touches clutter that lies no farther than this from it, along and across; micrometres. */
const REACH = { along: 5_000, across: 4_000 };

/** Lowest and highest place across of the part of an outline that lies between two places along, null without one; mm. */
function rowsBetween(outline: ClutterItem["outline"], from: number, to: number): [low: number, high: number] | null {
  const rows = outline.flatMap(([ax, ay], n) => {
    const [bx, by] = outline[(n + 1) % outline.length];
    if (Math.max(ax, bx) < from || Math.min(ax, bx) > to) return [];
    if (ax === bx) return [ay, by];
    return [ax, bx].map((x) => ay + ((by - ay) * (clamp(x, from, to) - ax)) / (bx - ax));
  });
  return rows.length === 0 ? null : [Math.min(...rows), Math.max(...rows)];
}

/** How far apart two stretches lie, 0 where they overlap. */
const gapBetween = (low: number, high: number, from: number, to: number): number => Math.max(0, from - high, low - to);

interface Touched {
  readonly item: ClutterItem;
  /** Square of the distance from the call to the clutter near it. */
  readonly away: number;
  /** From the middle of the call to the middle of the clutter, along and across together. */
  readonly off: number;
}

function touch(piece: Piece, item: ClutterItem): Touched | null {
  const start = toMicrometres(item.start);
  const end = toMicrometres(item.end);
  const along = gapBetween(piece.start, piece.end, start, end);
  // what runs slantwise lies where it passes the call, not anywhere in the box round it
  const rows = rowsBetween(item.outline, (piece.start - REACH.along) / 1000, (piece.end + REACH.along) / 1000);
  if (along > REACH.along || rows === null) return null;
  const across = gapBetween(piece.across, piece.across, toMicrometres(rows[0]), toMicrometres(rows[1]));
  if (across > REACH.across) return null;
  const off = Math.abs(piece.start + piece.end - start - end) + 2 * Math.abs(piece.across - toMicrometres(item.across));
  return { item, away: along ** 2 + across ** 2, off };
}

const compareTouched = (a: Touched, b: Touched): number =>
  a.away - b.away ||
  a.off - b.off ||
  a.item.start - b.item.start ||
  compareText(a.item.kind, b.item.kind) ||
  compareText(a.item.id, b.item.id);

/**
 * The clutter that a call was put on: the nearest one that lies within 5 mm along and 4 mm across of it, of equals the one
 * whose middle is nearer. Null where none does. The order of the list makes no difference.
 */
export function touchedClutter(piece: Piece, clutter: readonly ClutterItem[]): ClutterItem | null {
  const touched = clutter.map((item) => touch(piece, item)).filter((found) => found !== null);
  return touched.sort(compareTouched)[0]?.item ?? null;
}
