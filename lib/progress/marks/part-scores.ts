import { SECTION_PARTS } from "../../results";
import type { ReviewedSection } from "../../review";

/**
 * What each part of a section earned as it counts, marks, as a row for `reliabilityOf`: its alpha tells how far the parts agree on
 * who is good, and its standard error is that of the section's mark. Annulled questions are in it as far as their marks are: as if
 * they had not been asked. Null where a part was not asked; compare only sections that asked the same.
 */
export function partScores({ parts }: Pick<ReviewedSection, "parts">): (number | null)[] {
  return SECTION_PARTS.map((part) => {
    const reviewed = parts[part];
    return reviewed ? reviewed.earned / 1000 : null;
  });
}
