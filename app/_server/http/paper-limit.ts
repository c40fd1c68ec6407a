/** A paper with every text at its longest takes a tenth of it. */
export const MAX_PAPER_BYTES = 100_000;
