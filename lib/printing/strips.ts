import type { Mm } from "../math";

/** A stretch of the weld that one page shows, mm from the datum. */
export interface Strip {
  readonly from: Mm;
  readonly to: Mm;
}

/**
 * A piece cut into equal strips that fit on a page at true scale; neighbours share `overlap` mm, so that nothing at a cut is
 * seen in halves only.
 *
 * @param most longest strip that fits, mm; more than the overlap
 * @example stripsOf(300, 170, 10) // [{ from: 0, to: 155 }, { from: 145, to: 300 }]
 */
export function stripsOf(length: Mm, most: Mm, overlap: Mm): readonly Strip[] {
  const count = Math.max(1, Math.ceil((length - overlap) / (most - overlap)));
  const advance = (length - overlap) / count;
  return Array.from({ length: count }, (_, n) => ({ from: n * advance, to: n * advance + advance + overlap }));
}
