import { BOTH_SECTIONS, type Kind } from "../kind";
import { positive, wholeChoice } from "../numbers";
import { lowerName } from "../words";
import { drawSummed, ruleWords } from "./summed";

export const summedOver: Kind = {
  name: "summed-over",
  source: "criteria",
  sections: BOTH_SECTIONS,
  draft: (material, random) => {
    const summed = drawSummed(material, random);
    if (!summed) return null;
    const { window, most, type, given } = summed;
    return {
      stem: `By ${material.criteria.name}, ${given}: the length of ${lowerName(type)} is limited by what lies together in the worst stretch of weld. How long is that stretch?`,
      tolerance: 1,
      right: wholeChoice(window, ruleWords(material.criteria, summed)),
      wrong: positive([
        wholeChoice(most, "that is how much may lie in it"),
        wholeChoice(2 * window, "that is twice the stretch"),
        wholeChoice(window / 2, "that is half the stretch"),
        wholeChoice(3 * window, "that is a stretch of other documents, or the whole weld of a long piece"),
        wholeChoice(1.5 * window, "that is longer than the stretch"),
        wholeChoice(0.75 * window, "that is shorter than the stretch"),
      ]),
      place: null,
    };
  },
};
