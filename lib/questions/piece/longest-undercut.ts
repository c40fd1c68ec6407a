import { BOTH_SECTIONS, type Kind } from "../kind";
import { positive, wholeChoice } from "../numbers";
import { faceWords, stretchWords } from "../words";
import { acrossWords, facesOf, lengthOf, lengthTolerance, placeOf, recordable, tooSmall } from "./items";
import { isUndercut } from "./undercuts";

export const longestUndercut: Kind = {
  name: "longest-undercut",
  source: "piece",
  sections: BOTH_SECTIONS,
  draft: ({ truth }) => {
    const [longest, ...others] = recordable(truth)
      .filter(isUndercut)
      .sort((a, b) => lengthOf(b) - lengthOf(a));
    if (!longest) return null;
    const tolerance = lengthTolerance(longest);
    const rivals = [...others, ...tooSmall(truth).filter(isUndercut)];
    if (rivals.some((rival) => lengthOf(longest) - lengthOf(rival) <= tolerance + lengthTolerance(rival))) return null;
    const length = lengthOf(longest);
    const sum = others.reduce((total, item) => total + lengthOf(item), length);
    const grooves = recordable(truth).filter(
      ({ type }) => type === "shrinkage-groove" || type === "inter-run-undercut",
    );
    return {
      stem: `How long is the longest undercut along a toe of ${faceWords(facesOf(truth)[0])} (a chain of bites counts from the first to the last)?`,
      tolerance,
      right: wholeChoice(
        length,
        `it runs ${stretchWords(longest)}, ${acrossWords(longest.across, truth)}; measured on the piece`,
      ),
      wrong: positive([
        ...(others.length > 0 ? [wholeChoice(sum, "that is all undercuts added up, not the longest of them")] : []),
        ...others.map((other) => wholeChoice(lengthOf(other), `that is a shorter one, ${stretchWords(other)}`)),
        ...grooves.map((groove) =>
          wholeChoice(
            lengthOf(groove),
            `that is a groove of another kind, ${stretchWords(groove)} on ${faceWords(groove.face)}`,
          ),
        ),
        wholeChoice(longest.end, "that is how far from the datum end it stops"),
        wholeChoice(longest.start, "that is how far from the datum end it begins"),
        wholeChoice(2 * length, "that counts it on both toes"),
        wholeChoice(length / 2, "that takes its deeper half only"),
      ]),
      place: placeOf(longest),
    };
  },
};
