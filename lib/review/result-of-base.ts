import type { SectionResult } from "../results";
import type { ReviewAct } from "./act";

/** The marking that an overruling was said of: that of the act `base`, or the one at hand-in. */
export function resultOfBase(base: number | null, acts: readonly ReviewAct[], first: SectionResult): SectionResult {
  const what = acts.find(({ id }) => id === base)?.what;
  return what?.kind === "re-mark" ? what.result : first;
}
