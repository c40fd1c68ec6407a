import { PIECES } from "../../weld";
import { BOTH_SECTIONS, type Kind } from "../kind";
import { positive, wholeChoice } from "../numbers";
import { faceWords, lowerName, stretchWords } from "../words";
import { lengthOf, placedItems, placeOf, placeTolerance, recordable } from "./items";

export const placeOfType: Kind = {
  name: "place-of-type",
  source: "piece",
  sections: BOTH_SECTIONS,
  draft: ({ truth }, random) => {
    const only = recordable(truth).filter(
      ({ face, type }) => placedItems(truth).filter((item) => item.face === face && item.type === type).length === 1,
    );
    if (only.length === 0) return null;
    const item = random.pick(only);
    const { length } = PIECES[truth.joint.kind];
    const others = recordable(truth).filter((other) => other !== item);
    return {
      stem: `On ${faceWords(item.face)} there is one place with ${lowerName(item.type)}. How far from the datum end does it begin?`,
      tolerance: placeTolerance(item),
      right: wholeChoice(item.start, `it lies ${stretchWords(item)}`),
      wrong: positive([
        ...others.map((other) =>
          wholeChoice(
            other.start,
            `what begins there, on ${faceWords(other.face)}, is called ${lowerName(other.type)}`,
          ),
        ),
        ...(lengthOf(item) > 0 ? [wholeChoice(item.end, "that is where it ends")] : []),
        wholeChoice(length - item.start, "that is its distance from the wrong end"),
        wholeChoice(length - item.end, "that is measured from the far end of the piece"),
        wholeChoice(length / 2 + item.start / 2, "that takes the middle of the rest of the piece for its start"),
        wholeChoice(item.start / 2, "that reads every second mark of the rule"),
      ]),
      place: placeOf(item),
    };
  },
};
