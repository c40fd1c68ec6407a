import { flatThroat } from "../../weld";
import { BOTH_SECTIONS, type Kind } from "../kind";
import { positive, workedChoice } from "../numbers";
import { hundredths } from "../words";
import { ROUNDING } from "./sizes";

const SHORTER = [4, 5, 6, 7, 8];
const LONGER_BY = [2, 3, 4, 5];

export const unequalLegs: Kind = {
  name: "unequal-legs",
  source: "drawing",
  sections: BOTH_SECTIONS,
  draft: (_, random) => {
    const one = random.pick(SHORTER);
    const other = one + random.pick(LONGER_BY);
    const a = flatThroat(one, other);
    return {
      stem: `A fillet between plates at 90 degrees has legs of ${one} and ${other} mm and a flat face. How far is it from the root corner to the face by the shortest way?`,
      tolerance: ROUNDING,
      right: workedChoice(
        a,
        `it is the height of a right triangle over its longest side, ${one} × ${other} / √(${one}² + ${other}²) = ${hundredths(a)} (geometry)`,
      ),
      wrong: positive([
        workedChoice(one / Math.SQRT2, "that goes by the shorter leg alone"),
        workedChoice(other / Math.SQRT2, "that goes by the longer leg alone"),
        workedChoice((one + other) / 2 / Math.SQRT2, "that goes by the mean of both legs"),
        workedChoice(Math.hypot(one, other) / 2, "that is half the width of the face"),
        workedChoice(one, "that takes the shorter leg itself"),
        workedChoice(0.5 * one, "that is half the shorter leg"),
        workedChoice((one * other) / (one + other), "that divides by the sum of the legs"),
      ]),
      place: null,
    };
  },
};
