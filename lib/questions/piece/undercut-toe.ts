import { BOTH_SECTIONS, type Choice, type Kind } from "../kind";
import { faceWords, stretchWords } from "../words";
import { facesOf, isDoubtful, placedItems, placeOf, recordable, sideWords } from "./items";
import { isUndercut } from "./undercuts";

/** Nearer to the middle than this nobody can say at which toe something lies, mm. */
const MIDDLE = 2;

export const undercutToe: Kind = {
  name: "undercut-toe",
  source: "piece",
  sections: BOTH_SECTIONS,
  draft: ({ truth }) => {
    const found = recordable(truth).filter(isUndercut);
    const all = placedItems(truth).filter(isUndercut);
    if (all.some(({ across }) => Math.abs(across) < MIDDLE)) return null;
    const [above, below] = [1, -1].map((side) => found.filter(({ across }) => across * side > 0));
    // where none but doubtful ones lie at a toe, whether there is any to record is not clear enough
    const isOpen = (side: number) => {
      const there = all.filter(({ across }) => across * side > 0);
      return there.length > 0 && there.every(isDoubtful);
    };
    if (isOpen(1) || isOpen(-1)) return null;
    const sides = sideWords(truth);
    const places = (items: typeof found) => items.map(stretchWords).join(" and ");
    const here = [
      ...(above.length > 0 ? [`at ${sides.above} it lies ${places(above)}`] : [`there is none at ${sides.above}`]),
      ...(below.length > 0 ? [`at ${sides.below} it lies ${places(below)}`] : [`there is none at ${sides.below}`]),
    ].join(", ");
    const choices: Choice[] = [
      { text: `Only at the toe on ${sides.above}`, why: "that leaves out a side, or takes one for the other" },
      { text: `Only at the toe on ${sides.below}`, why: "that leaves out a side, or takes one for the other" },
      { text: "At the toes on both plates alike", why: "that takes a tight or faint toe for undercut" },
      { text: "Not at either of the two toes", why: "that overlooks what is there, or calls it too small" },
    ];
    const right = above.length > 0 ? (below.length > 0 ? 2 : 0) : below.length > 0 ? 1 : 3;
    return {
      stem: `At which toe of ${faceWords(facesOf(truth)[0])} does undercut lie that has to be recorded?`,
      right: { ...choices[right], why: here },
      wrong: choices.filter((_, n) => n !== right),
      place: found.length === 1 ? placeOf(found[0]) : null,
    };
  },
};
