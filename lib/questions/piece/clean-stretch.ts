import { DEFAULT_TOLERANCES } from "../../results";
import { PIECES } from "../../weld";
import { BOTH_SECTIONS, type Choice, type Kind } from "../kind";
import { faceWords, lowerName, stretchWords } from "../words";
import { facesOf, isDoubtful, placedItems, recordable } from "./items";

const LENGTH = 30;
const STEP = 10;
/** Nobody is far enough off to take what lies further away for something inside. */
const MARGIN = 2 * DEFAULT_TOLERANCES.start.full;

export const cleanStretch: Kind = {
  name: "clean-stretch",
  source: "piece",
  sections: BOTH_SECTIONS,
  draft: ({ truth }, random) => {
    const face = random.pick(facesOf(truth));
    const { length } = PIECES[truth.joint.kind];
    const starts = Array.from({ length: (length - LENGTH) / STEP + 1 }, (_, n) => n * STEP);
    const choice = (from: number, why: string): Choice => ({
      text: `${from} to ${from + LENGTH} mm`,
      value: from,
      why,
    });
    const here = placedItems(truth).filter((item) => item.face === face);
    const clean = starts.filter((from) =>
      here.every((item) => item.end < from - MARGIN || item.start > from + LENGTH + MARGIN),
    );
    if (clean.length === 0) return null;
    const full = starts.flatMap((from) => {
      const inside = recordable(truth, face).filter((item) => {
        if (isDoubtful(item)) return false;
        const shared = Math.min(item.end, from + LENGTH) - Math.max(item.start, from);
        const isWell = item.start >= from + MARGIN / 2 && item.end <= from + LENGTH - MARGIN / 2;
        return isWell || shared >= 1.5 * MARGIN;
      });
      return inside.length === 0
        ? []
        : [choice(from, `what lies there is ${lowerName(inside[0].type)}, ${stretchWords(inside[0])}`)];
    });
    const from = random.pick(clean);
    return {
      stem: `On which of these ${LENGTH} mm of ${faceWords(face)}, counted from the datum end, is there nothing to record, misalignment left aside?`,
      right: choice(from, "nothing that has to be recorded lies in it or near it"),
      wrong: full,
      tolerance: LENGTH / 2 - 1,
      place: { face, start: from, end: from + LENGTH },
    };
  },
};
