import { DEFAULT_TOLERANCES } from "../../results";
import type { TruthItem } from "../../specimen";
import { BOTH_SECTIONS, type Kind } from "../kind";
import { countChoice } from "../numbers";
import { faceWords, stretchWords } from "../words";
import { facesOf, isDoubtful, placedItems, recordable } from "./items";

const WINDOW = 25;
/** Two places may each be off by a full tolerance. */
const DOUBT = 2 * DEFAULT_TOLERANCES.start.full;

const isPore = ({ type }: TruthItem): boolean => type === "surface-pore";

/** The most pores in a window of that length, and the first of those that lie in it. */
function fullest(pores: readonly TruthItem[], window: number): readonly TruthItem[] {
  return pores
    .map((first) => pores.filter(({ start }) => start >= first.start && start <= first.start + window))
    .reduce((most, next) => (next.length > most.length ? next : most), []);
}

export const poresIn25Mm: Kind = {
  name: "pores-in-25-mm",
  source: "piece",
  sections: BOTH_SECTIONS,
  draft: ({ truth }, random) => {
    const face = random.pick(facesOf(truth));
    const pores = recordable(truth, face).filter(isPore);
    const worst = fullest(pores, WINDOW);
    const all = placedItems(truth).filter((item) => isPore(item) && item.face === face);
    const sure = all.filter((item) => !isDoubtful(item));
    const [least, most] = [fullest(sure, WINDOW - DOUBT).length, fullest(all, WINDOW + DOUBT).length];
    // one pore is no question, and a doubtful one beside the others would be a matter of its diameter
    if (worst.length < 2 || least !== most) return null;
    const elsewhere = recordable(truth).filter((item) => isPore(item) && item.face !== face).length;
    const place = { face, start: worst[0].start, end: worst[worst.length - 1].start };
    return {
      stem: `How many single surface pores that have to be recorded lie in the worst 25 mm of ${faceWords(face)}?`,
      right: countChoice(
        worst.length,
        `they lie ${stretchWords(place)}; the window slides along until it holds the most`,
      ),
      wrong: [
        countChoice(pores.length, "that is how many there are on the whole face"),
        countChoice(pores.length + elsewhere, "that is how many there are on the whole piece"),
        countChoice(worst.length - 1, "that leaves one out that just fits into the window"),
        countChoice(worst.length + 1, "that takes one in that lies outside the window"),
        countChoice(worst.length + 2, "that counts a window of more than 25 mm"),
        countChoice(2 * worst.length, "that counts a window of 50 mm as if pores were spread evenly"),
        ...(worst.length > 2 ? [countChoice(worst.length - 2, "that starts the window at the wrong pore")] : []),
        countChoice(0, "that takes pores inside 25 mm for one cluster and counts none of them"),
      ],
      place,
    };
  },
};
