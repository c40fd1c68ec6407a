import { imperfection } from "../../imperfections";
import { BOTH_SECTIONS, type Kind } from "../kind";
import { faceWords, stretchWords } from "../words";
import { facesOf, isDoubtful, placedItems, placeOf, placeTolerance, recordable } from "./items";
import { otherNames } from "./other-names";

export const firstFromDatum: Kind = {
  name: "first-from-datum",
  source: "piece",
  sections: BOTH_SECTIONS,
  draft: ({ truth }, random) => {
    const face = random.pick(facesOf(truth));
    const [first, ...later] = recordable(truth, face).sort((a, b) => a.start - b.start);
    if (!first || isDoubtful(first)) return null;
    const rivals = placedItems(truth).filter((item) => item.face === face && item !== first);
    const isClear = rivals.every((item) => item.start - first.start > placeTolerance(first) + placeTolerance(item));
    if (!isClear || later.length === 0) return null;
    return {
      stem: `Going along ${faceWords(face)} from the datum end, and leaving misalignment aside, what has to be recorded first?`,
      right: { text: imperfection(first.type).name, why: `it begins first, ${stretchWords(first)}` },
      wrong: otherNames(first.type, face, truth),
      place: placeOf(first),
    };
  },
};
