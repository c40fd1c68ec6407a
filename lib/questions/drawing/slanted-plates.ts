import { BOTH_SECTIONS, type Kind } from "../kind";
import { positive, workedChoice } from "../numbers";
import { hundredths } from "../words";
import { ROUNDING } from "./sizes";

const ANGLES = [60, 75, 105, 120];
const LEGS = [5, 6, 7, 8, 10];

const cosine = (degrees: number): number => Math.cos((degrees * Math.PI) / 180);

export const slantedPlates: Kind = {
  name: "slanted-plates",
  source: "drawing",
  sections: BOTH_SECTIONS,
  draft: (_, random) => {
    const angle = random.pick(ANGLES);
    const z = random.pick(LEGS);
    const a = z * cosine(angle / 2);
    return {
      stem: `A fillet joins plates that stand at ${angle} degrees to each other. Both legs are ${z} mm and the face is flat. What is its throat?`,
      tolerance: ROUNDING,
      right: workedChoice(
        a,
        `the leg times the cosine of half the angle, ${z} × cos ${angle / 2}° = ${hundredths(a)} (geometry)`,
      ),
      wrong: positive([
        workedChoice(z / Math.SQRT2, "that is for plates at 90 degrees"),
        workedChoice(z * Math.sin((angle / 2) * (Math.PI / 180)), "that takes the sine for the cosine"),
        workedChoice(z * Math.abs(cosine(angle)), "that takes the whole angle for half of it"),
        workedChoice(z, "that takes the leg for the throat"),
        workedChoice(z * cosine(angle / 4), "that takes a quarter of the angle"),
        workedChoice(z * cosine(Math.min(85, 0.75 * angle)), "that takes three quarters of the angle"),
      ]),
      place: null,
    };
  },
};
