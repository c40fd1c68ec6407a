import { BOTH_SECTIONS, type Choice, type Kind } from "../kind";
import { faceWords, stretchWords } from "../words";
import { facesOf, recordable, sideWords, tooSmall } from "./items";
import { isUndercut } from "./undercuts";

/** Nearer to the middle than this nobody can say at which toe something lies, mm. */
const MIDDLE = 2;

export const undercutToe: Kind = {
  name: "undercut-toe",
  source: "piece",
  sections: BOTH_SECTIONS,
  draft: ({ truth }) => {
    const found = recordable(truth).filter(isUndercut);
    const faint = tooSmall(truth).filter(isUndercut);
    if ([...found, ...faint].some(({ across }) => Math.abs(across) < MIDDLE)) return null;
    const [above, below] = [1, -1].map((side) => found.filter(({ across }) => across * side > 0));
    // where only a faint one lies at a toe, whether there is any is a matter of depth and not clear enough
    if ([above, below].some((at, n) => at.length === 0 && faint.some(({ across }) => across > 0 === (n === 0))))
      return null;
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
    const all = [...above, ...below];
    return {
      stem: `At which toe of ${faceWords(facesOf(truth)[0])} does undercut lie that has to be recorded?`,
      right: { ...choices[right], why: here },
      wrong: choices.filter((_, n) => n !== right),
      place: all.length === 1 ? { face: all[0].face, start: all[0].start, end: all[0].end } : null,
    };
  },
};
