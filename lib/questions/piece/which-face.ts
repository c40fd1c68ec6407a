import { imperfection, typesOn } from "../../imperfections";
import type { Choice, Kind } from "../kind";
import { stretchWords } from "../words";
import { isDoubtful, placedItems, placeOf, recordable } from "./items";

/** Types that both faces of a plate can have. */
const ON_BOTH = typesOn("cap").filter((type) => typesOn("root").includes(type));

const ANSWERS = [
  "On the cap face only",
  "On the root face only",
  "On the cap and root face",
  "On neither of the faces",
];

export const whichFace: Kind = {
  name: "which-face",
  source: "piece",
  sections: ["plate"],
  draft: ({ truth }, random) => {
    const known = ON_BOTH.flatMap((type) => {
      const has = (["cap", "root"] as const).map((face) =>
        recordable(truth, face).filter((item) => item.type === type),
      );
      const isOpen = (["cap", "root"] as const).some((face) => {
        const there = placedItems(truth).filter((item) => item.type === type && item.face === face);
        return there.length > 0 && there.every(isDoubtful);
      });
      const answer = has[0].length > 0 ? (has[1].length > 0 ? 2 : 0) : has[1].length > 0 ? 1 : 3;
      return isOpen ? [] : [{ type, answer, items: [...has[0], ...has[1]] }];
    });
    const possible = [0, 1, 2, 3].filter((answer) => known.some((one) => one.answer === answer));
    if (possible.length === 0 || placedItems(truth).length === 0) return null;
    const wanted = random.pick(possible);
    const { type, answer, items } = random.pick(known.filter((one) => one.answer === wanted));
    const there =
      items.length === 0
        ? "nothing of that kind has to be recorded on this plate"
        : items.map((item) => `${item.face} face ${stretchWords(item)}`).join(", ");
    const wrong = (n: number): Choice => ({ text: ANSWERS[n], why: WRONG[n] });
    return {
      stem: `${imperfection(type).name}: where on this plate does it have to be recorded?`,
      right: { text: ANSWERS[answer], why: there },
      wrong: [0, 1, 2, 3].filter((n) => n !== answer).map(wrong),
      place: items.length > 0 ? placeOf(items[0]) : null,
    };
  },
};

const WRONG = [
  "that leaves the root face unsearched, or mixes up the faces",
  "that leaves the cap face unsearched, or mixes up the faces",
  "that takes a look-alike on one of the faces for it",
  "that overlooks it",
];
