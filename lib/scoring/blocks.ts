import type { Piece } from "./pieces";
import { appraise, besideOf, type Hull, placeShare, typeShare } from "./quality";
import type { Target } from "./targets";

/** One call or several against one truth, or one call against several truths: a possible line of the account. */
export interface Block {
  readonly target: Target;
  /** Positions in the section's list of pieces. */
  readonly pieces: readonly number[];
  /** Thousandths of a mark: parts and price back. Greater than 0. */
  readonly value: number;
}

/** A call held against one target, with all that a hull needs of it. */
interface Placed {
  readonly position: number;
  readonly start: number;
  readonly end: number;
  readonly size: number;
  readonly likeness: number;
  readonly beside: number;
}

/**
 * Every block that can be part of a best structure. Left out are blocks worth nothing, which is where the calls are
 * not in the target's place, and blocks worth no more than a smaller one inside them, since whatever uses such a
 * block may use the smaller one instead. Neither can change the best total.
 */
export function possibleBlocks(
  singles: readonly Target[],
  merged: readonly Target[],
  pieces: readonly Piece[],
  price: number,
): Block[] {
  const blocks: Block[] = [];
  const alone = new Map<Target, Int32Array>();
  for (const target of singles) {
    const values = new Int32Array(pieces.length);
    alone.set(target, values);
    const placed = piecesInPlace(target, pieces);
    for (const piece of placed) {
      values[piece.position] = blockValue(target, hullOfOne(piece), price);
      if (values[piece.position] > 0) blocks.push({ target, pieces: [piece.position], value: values[piece.position] });
    }
    if (!target.isPoint) addSplitBlocks(blocks, target, placed, values, price);
  }
  for (const target of merged) {
    for (const piece of piecesInPlace(target, pieces)) {
      const value = blockValue(target, hullOfOne(piece), price);
      const single = Math.max(...target.truths.map((truth) => alone.get(singles[truth])![piece.position]));
      if (value > single) blocks.push({ target, pieces: [piece.position], value });
    }
  }
  return blocks;
}

/** What the best structure counts: what the parts earn and what comes back of the price. */
export function blockValue(target: Target, hull: Hull, price: number): number {
  const value = appraise(target, hull, price);
  return value.parts + value.back;
}

function piecesInPlace(target: Target, pieces: readonly Piece[]): Placed[] {
  const placed: Placed[] = [];
  pieces.forEach((piece, position) => {
    const { start, end, size } = piece;
    const call = {
      position,
      start,
      end,
      size,
      likeness: typeShare(target, piece),
      beside: besideOf(target, piece),
    };
    if (placeShare(target, hullOfOne(call)) > 0) placed.push(call);
  });
  return placed;
}

function hullOfOne(piece: Placed): Hull {
  const { start, end, size, likeness, beside } = piece;
  return { count: 1, start, end, size, likeness, beside, gap: 0 };
}

/** Adds the pairs and triples of calls on one line. `placed` is in order of start, as the section's pieces are. */
function addSplitBlocks(
  blocks: Block[],
  target: Target,
  placed: readonly Placed[],
  alone: Int32Array,
  price: number,
): void {
  const n = placed.length;
  const pairValues = new Int32Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) {
      const [a, b] = [placed[i], placed[j]];
      const value = blockValue(target, joinedHull(target, hullOfOne(a), b), price);
      pairValues[i * n + j] = value;
      if (value > Math.max(alone[a.position], alone[b.position])) {
        blocks.push({ target, pieces: [a.position, b.position], value });
      }
    }
  }
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) {
      const [a, b] = [placed[i], placed[j]];
      const pair = joinedHull(target, hullOfOne(a), b);
      for (let k = j + 1; k < n; k++) {
        const c = placed[k];
        const smaller = Math.max(
          pairValues[i * n + j],
          pairValues[i * n + k],
          pairValues[j * n + k],
          alone[a.position],
          alone[b.position],
          alone[c.position],
        );
        const value = blockValue(target, joinedHull(target, pair, c), price);
        if (value > smaller) blocks.push({ target, pieces: [a.position, b.position, c.position], value });
      }
    }
  }
}

/** A hull with one more call, which starts no earlier than those before it. */
function joinedHull(target: Target, hull: Hull, piece: Placed): Hull {
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
