import { imperfection } from "../../imperfections";
import { BOTH_SECTIONS, type Kind } from "../kind";
import { faceWords, stretchWords, wholeMm } from "../words";
import { facesOf, lengthOf, lengthTolerance, placedItems, placeOf, recordable } from "./items";
import { otherNames } from "./other-names";

export const longestIndication: Kind = {
  name: "longest-indication",
  source: "piece",
  sections: BOTH_SECTIONS,
  draft: ({ truth }, random) => {
    const face = random.pick(facesOf(truth));
    const [longest, ...others] = recordable(truth, face).sort((a, b) => lengthOf(b) - lengthOf(a));
    if (!longest || others.length === 0) return null;
    const rivals = placedItems(truth).filter((item) => item.face === face && item !== longest);
    const apart = (item: typeof longest) => lengthTolerance(longest) + lengthTolerance(item);
    if (rivals.some((item) => lengthOf(longest) - lengthOf(item) <= apart(item))) return null;
    return {
      stem: `Which of these runs furthest along the weld on ${faceWords(face)}, misalignment left aside?`,
      right: {
        text: imperfection(longest.type).name,
        why: `it runs ${stretchWords(longest)}, ${wholeMm(lengthOf(longest))} mm, and nothing else on that face comes near`,
      },
      wrong: otherNames(longest.type, face, truth),
      place: placeOf(longest),
    };
  },
};
