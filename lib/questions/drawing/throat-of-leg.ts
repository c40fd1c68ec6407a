import { requiredThroat } from "../../weld";
import { BOTH_SECTIONS, type Kind } from "../kind";
import { positive, workedChoice } from "../numbers";
import { hundredths } from "../words";
import { drawnSize, ROUNDING } from "./sizes";

export const throatOfLeg: Kind = {
  name: "throat-of-leg",
  source: "drawing",
  sections: BOTH_SECTIONS,
  draft: ({ truth }, random) => {
    const size = drawnSize(truth, "z", random);
    const z = size.value;
    const a = requiredThroat(size);
    return {
      stem: `A drawing gives z${z} for a fillet between plates at 90 degrees, with equal legs and a flat face. Which throat belongs to it?`,
      tolerance: ROUNDING,
      right: workedChoice(
        a,
        `the throat is the leg divided by √2, ${z} / 1.414 = ${hundredths(a)}; z before a size is the leg, a the throat (ISO 2553, secondary sources agree)`,
      ),
      wrong: positive([
        workedChoice(z, "that takes the leg for the throat"),
        workedChoice(z * Math.SQRT2, "that multiplies by √2, as from throat to leg"),
        workedChoice(z / 2, "that takes half the leg"),
        workedChoice(z * Math.cos(Math.PI / 6), "that is for plates at 60 degrees"),
        workedChoice(0.6 * z, "that is smaller than an even face can have it"),
        workedChoice(z * Math.tan(Math.PI / 6), "that takes the tangent of 30 degrees for the sine of 45"),
      ]),
      place: null,
    };
  },
};
