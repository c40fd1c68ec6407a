/** Stands on every screen and every print that shows a criterion or a sentence. */
export const CAUTION =
  "For training only. These limits were carried over by hand, and some are from memory or from a single source. Judge real work by your own copy of the standard and by the contract.";
