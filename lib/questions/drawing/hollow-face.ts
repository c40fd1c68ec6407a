import { BOTH_SECTIONS, type Kind } from "../kind";
import { positive, workedChoice } from "../numbers";
import { hundredths } from "../words";
import { ROUNDING } from "./sizes";

const LEGS = [6, 7, 8, 9, 10];
const HOLLOWS = [0.5, 0.8, 1, 1.2, 1.5];

export const hollowFace: Kind = {
  name: "hollow-face",
  source: "drawing",
  sections: BOTH_SECTIONS,
  draft: (_, random) => {
    const z = random.pick(LEGS);
    const h = random.pick(HOLLOWS);
    const a = z / Math.SQRT2 - h;
    return {
      stem: `Both legs of a fillet between plates at 90 degrees measure ${z} mm, and its face is hollow: in the middle it falls back ${h} mm behind the line from toe to toe. Which throat is left there?`,
      tolerance: ROUNDING,
      right: workedChoice(a, `${z} / 1.414 - ${h} = ${hundredths(a)} (geometry): a hollow face is sized by its throat`),
      wrong: positive([
        workedChoice(z / Math.SQRT2, "that is the throat of a flat face"),
        workedChoice(z / Math.SQRT2 + h, "that adds the hollow, as if the face were convex"),
        workedChoice(z - h, "that takes the hollow off the leg"),
        workedChoice((z - h) / Math.SQRT2, "that takes the hollow off the leg before dividing"),
        workedChoice(z / Math.SQRT2 - 2 * h, "that takes the hollow off twice"),
        workedChoice((z / Math.SQRT2 - h) / Math.SQRT2, "that divides by √2 once more"),
        workedChoice(z / 2 - h, "that takes half the leg for the throat"),
      ]),
      place: null,
    };
  },
};
