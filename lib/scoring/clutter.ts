import type { ClutterItem } from "../specimen";
import { compareText, type Piece } from "./pieces";
import { toMicrometres } from "./ramp";

/** A call touches clutter that lies no farther than this from it, along and across; micrometres. */
const REACH = { along: 5_000, across: 4_000 };

/** How far apart two stretches lie, 0 where they overlap. */
const gapBetween = (low: number, high: number, from: number, to: number): number => Math.max(0, from - high, low - to);

interface Touched {
  readonly item: ClutterItem;
  /** Square of the distance from the call to the clutter's extent. */
  readonly away: number;
  /** From the middle of the call to the middle of the clutter, along and across together. */
  readonly off: number;
}

function touch(piece: Piece, item: ClutterItem): Touched | null {
  const start = toMicrometres(item.start);
  const end = toMicrometres(item.end);
  const rows = item.outline.map(([, y]) => toMicrometres(y));
  const low = Math.min(...rows);
  const high = Math.max(...rows);
  const along = gapBetween(piece.start, piece.end, start, end);
  const across = gapBetween(piece.across, piece.across, low, high);
  if (along > REACH.along || across > REACH.across) return null;
  const off = Math.abs(piece.start + piece.end - start - end) + Math.abs(2 * piece.across - low - high);
  return { item, away: along ** 2 + across ** 2, off };
}

const compareTouched = (a: Touched, b: Touched): number =>
  a.away - b.away ||
  a.off - b.off ||
  a.item.start - b.item.start ||
  compareText(a.item.kind, b.item.kind) ||
  compareText(a.item.id, b.item.id);

/**
 * The clutter that a call was put on: the nearest one whose extent lies within 5 mm along and 4 mm across of it, of
 * equals the one whose middle is nearer. Null where none does. The order of the list makes no difference.
 */
export function touchedClutter(piece: Piece, clutter: readonly ClutterItem[]): ClutterItem | null {
  const touched = clutter.map((item) => touch(piece, item)).filter((found) => found !== null);
  return touched.sort(compareTouched)[0]?.item ?? null;
}
