import type { Indication, Piece, SymbolValues } from "@/lib/criteria";
import type { ImperfectionType } from "@/lib/imperfections";
import { imperfection } from "@/lib/imperfections";

/** A weld of 300 mm on 10 mm plate or a fillet a6 with everything measured, and what differs from that. */
export const pieceOf = (values: SymbolValues = {}, length = 300): Piece => ({
  length,
  values: { t: 10, s: 10, a: 6, aA: 6, b: 16, bRoot: 4, z: 8.5, hCap: 2, ...values },
});

let counter = 0;

/** An indication from start to end on the first face where its type can occur. */
export function seen(
  type: ImperfectionType,
  start: number,
  end: number,
  measured: Indication["measured"] = {},
  face = imperfection(type).faces[0],
): Indication {
  counter += 1;
  return { id: `i${counter}`, type, face, start, end, measured };
}

/** A point with one measure. */
export const at = (type: ImperfectionType, place: number, measured: Indication["measured"] = {}) =>
  seen(type, place, place, measured);
