import { imperfection } from "../../imperfections";
import { BOTH_SECTIONS, type Kind } from "../kind";
import { faceWords, looks, stretchWords } from "../words";
import { acrossWords, isAlone, placeOf, recordable } from "./items";
import { harmlessNames, otherNames } from "./other-names";

export const typeAtPlace: Kind = {
  name: "type-at-place",
  source: "piece",
  sections: BOTH_SECTIONS,
  draft: ({ truth }, random) => {
    const clear = recordable(truth).filter((item) => isAlone(item, truth));
    if (clear.length === 0) return null;
    const item = random.pick(clear);
    return {
      stem: `What lies on ${faceWords(item.face)} ${stretchWords(item)} from the datum end, ${acrossWords(item.across, truth)}?`,
      right: { text: imperfection(item.type).name, why: `it looks like this: ${looks(item.type)}` },
      wrong: [...otherNames(item.type, item.face, truth), ...harmlessNames(null)],
      place: placeOf(item),
    };
  },
};
