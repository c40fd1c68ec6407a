import type { SectionResult } from "../../results";

/**
 * What each part of a section earned, marks, as a row for `reliabilityOf`: its alpha tells how far the parts agree on who is good, and
 * its standard error is that of the section's mark. Null where a part was not asked; compare only sections that asked the same.
 */
export function partScores({ indications, dimensions, sentences, questions }: SectionResult): (number | null)[] {
  return [indications, dimensions, sentences, questions].map((part) => part && part.earned / 1000);
}
