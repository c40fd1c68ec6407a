import type { ImperfectionType } from "../imperfections";
import type { Call } from "../report";
import { toMicrometres } from "./ramp";

/** A call that has a place, in whole micrometres, start <= end. */
export interface Piece {
  readonly id: string;
  readonly type: ImperfectionType | null;
  readonly start: number;
  readonly end: number;
  readonly across: number;
  /** µm, or -1 where none was written. */
  readonly size: number;
}

/** A call as a piece, or null if its start or its place across is blank. An empty end means the start. */
export function toPiece(call: Call): Piece | null {
  if (call.start === null || call.across === null) return null;
  const one = toMicrometres(call.start);
  const other = call.end === null ? one : toMicrometres(call.end);
  return {
    id: call.id,
    type: call.type,
    start: Math.min(one, other),
    end: Math.max(one, other),
    across: toMicrometres(call.across),
    size: call.size === null ? -1 : toMicrometres(call.size),
  };
}

/** Order by what was written, so that the order of entry cannot matter; ids only break ties between equal calls. */
export function comparePieces(a: Piece, b: Piece): number {
  return (
    a.start - b.start ||
    a.end - b.end ||
    a.across - b.across ||
    compareText(a.type ?? "", b.type ?? "") ||
    a.size - b.size ||
    compareText(a.id, b.id)
  );
}

/** Order by code units: the same on every machine, unlike a locale's. */
export function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
