import type { Piece } from "./pieces";
import { type Placed, piecesInPlace } from "./placed";
import { splitBlocks } from "./splits";
import type { Target } from "./targets";

/** One call or several against one truth, or one call against several truths: a possible line of the account. */
export interface Block {
  readonly target: Target;
  /** Positions in the section's list of pieces. */
  readonly pieces: readonly number[];
  /** Thousandths of a mark: parts and price back. Greater than 0. */
  readonly value: number;
}

/**
 * Every block that can be part of a best structure. Left out are blocks worth nothing, which is where the calls are
 * not in the target's place, and blocks that a smaller or another block can always stand in for; neither can change
 * the best total.
 */
export function possibleBlocks(
  singles: readonly Target[],
  merged: readonly Target[],
  pieces: readonly Piece[],
  price: number,
): Block[] {
  const placed = new Map<Target, readonly Placed[]>();
  for (const target of [...singles, ...merged]) placed.set(target, piecesInPlace(target, pieces, price));
  const wanted = callsWanted(placed, singles.length);
  return [
    ...singles.flatMap((target) => alone(target, placed.get(target)!)),
    ...singles.flatMap((target, truth) =>
      target.isPoint ? [] : splitBlocks(target, placed.get(target)!, rivalsOf(wanted, truth), price),
    ),
    ...merged.flatMap((target) => {
      const singlesOf = target.truths.map((truth) => placed.get(singles[truth])!);
      return alone(target, placed.get(target)!).filter(({ pieces: [position], value }) =>
        singlesOf.every((list) => value > (list.find((piece) => piece.position === position)?.value ?? 0)),
      );
    }),
  ];
}

function alone(target: Target, placed: readonly Placed[]): Block[] {
  return placed
    .filter((piece) => piece.value > 0)
    .map((piece) => ({ target, pieces: [piece.position], value: piece.value }));
}

/** For each truth the calls that it could use, by itself or together with others. */
function callsWanted(placed: ReadonlyMap<Target, readonly Placed[]>, truthCount: number): Set<number>[] {
  const wanted = Array.from({ length: truthCount }, () => new Set<number>());
  for (const [target, list] of placed) {
    for (const truth of target.truths) for (const piece of list) wanted[truth].add(piece.position);
  }
  return wanted;
}

/** How many other truths could use a call that this one could use. */
function rivalsOf(wanted: readonly Set<number>[], truth: number): number {
  const mine = [...wanted[truth]];
  return wanted.filter((other, i) => i !== truth && mine.some((position) => other.has(position))).length;
}
