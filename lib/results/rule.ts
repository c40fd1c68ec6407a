/** Version of the marking rule. Every mark stores it; a later version makes a new mark beside the old one. */
export const RULE_VERSION = "3.0";

/** What is marked on one indication, in the order of the report form. */
export const PARTS = ["found", "type", "start", "end", "size", "across"] as const;
export type Part = (typeof PARTS)[number];

/** Share of an indication that each part is worth, percent. Where a part does not apply the others share its worth. */
export const PART_SHARES: Readonly<Record<Part, number>> = {
  found: 40,
  type: 25,
  start: 10,
  end: 10,
  size: 10,
  across: 5,
};

/** The other numbers of the rule; common practice, no source. A change needs a new RULE_VERSION. */
export const RULE = {
  /** Price of one call as a share of the mean indication. */
  price: 0.5,
  /** Share of its worth that an indication keeps for each call after the first on it. */
  keptPerExtraCall: 0.95,
  /** Share that a merged call keeps for each indication after the first under it. */
  keptPerExtraIndication: 0.85,
  /** Most calls that count as pieces of one indication, and most indications under one call. */
  mostInBlock: 3,
  /** How many imperfections the sentence on the piece is worth. */
  pieceSentence: 2,
  /** Marks that a call costs where there is nothing to find. */
  priceOnClean: 15,
} as const;
