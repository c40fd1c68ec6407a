import { PIECES } from "../../weld";
import { BOTH_SECTIONS, type Kind } from "../kind";
import { positive, wholeChoice } from "../numbers";
import { lowerName } from "../words";
import { drawSummed, ruleWords } from "./summed";

export const summedMost: Kind = {
  name: "summed-most",
  source: "criteria",
  sections: BOTH_SECTIONS,
  draft: (material, random) => {
    const summed = drawSummed(material, random);
    if (!summed || !Number.isInteger(summed.most)) return null;
    const { window, most, type, given } = summed;
    return {
      stem: `By ${material.criteria.name}, ${given}: how much ${lowerName(type)} may lie in the worst ${window} mm of a weld of ${PIECES[material.truth.joint.kind].length} mm, lengths added up?`,
      tolerance: 1,
      right: wholeChoice(most, ruleWords(material.criteria, summed)),
      wrong: positive([
        wholeChoice(window, "that is the stretch in which lengths are added up"),
        wholeChoice(2 * most, "that is twice as much"),
        wholeChoice(3 * most, "that is what lies in it only if three stretches are taken for one"),
        wholeChoice(0.4 * most, "that is less than is allowed"),
        wholeChoice(0.6 * most, "that is less than is allowed"),
        wholeChoice(0.2 * most, "that is a limit on single pores, not on lengths"),
      ]),
      place: null,
    };
  },
};
