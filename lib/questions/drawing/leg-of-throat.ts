import { requiredLeg } from "../../weld";
import { BOTH_SECTIONS, type Kind } from "../kind";
import { positive, workedChoice } from "../numbers";
import { hundredths } from "../words";
import { drawnSize, ROUNDING } from "./sizes";

export const legOfThroat: Kind = {
  name: "leg-of-throat",
  source: "drawing",
  sections: BOTH_SECTIONS,
  draft: ({ truth }, random) => {
    const size = drawnSize(truth, "a", random);
    const a = size.value;
    const z = requiredLeg(size);
    return {
      stem: `A drawing gives a${a} for a fillet between plates at 90 degrees, with equal legs and a flat face. How long has each leg to be at least?`,
      tolerance: ROUNDING,
      right: workedChoice(
        z,
        `the leg is the throat times √2, ${a} × 1.414 = ${hundredths(z)}; a before a size is the throat, z the leg (ISO 2553, secondary sources agree)`,
      ),
      wrong: positive([
        workedChoice(a, "that takes the throat for the leg"),
        workedChoice(a / Math.SQRT2, "that divides by √2, as from leg to throat"),
        workedChoice(2 * a, "that is the width of the face from toe to toe"),
        workedChoice(1.2 * a, "that leg falls short of the throat"),
        workedChoice(a * Math.sqrt(3), "that is for another angle between the plates"),
        workedChoice(a + Math.SQRT2 + a / 2, "that adds a half and 1.4 mm instead of multiplying"),
      ]),
      place: null,
    };
  },
};
