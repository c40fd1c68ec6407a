import { DEFAULT_DIMENSION_TOLERANCES } from "../../results";
import { isFilletTruth } from "../../specimen";
import { FILLET_PLATES, FILLET_STATIONS } from "../../weld";
import type { Kind } from "../kind";
import { measuredChoice, positive } from "../numbers";
import { dimensionOf, misread } from "./plate-dimension";

export const legAtStation: Kind = {
  name: "leg-at-station",
  source: "piece",
  sections: ["fillet"],
  draft: ({ truth }, random) => {
    if (!isFilletTruth(truth)) return null;
    const station = 1 + random.integer(FILLET_STATIONS);
    const plate = random.pick(FILLET_PLATES);
    const other = plate === "base" ? "standing" : "base";
    const leg = dimensionOf(truth, `${plate}-leg`, station);
    const across = dimensionOf(truth, `${other}-leg`, station);
    const throat = dimensionOf(truth, "throat", station);
    if (!leg || !across || !throat) return null;
    const tolerance = DEFAULT_DIMENSION_TOLERANCES[`${plate}-leg`];
    const at = truth.stations[station - 1];
    return {
      stem: `How long is the leg on the ${plate} plate at station ${station}?`,
      tolerance,
      right: measuredChoice(
        leg.value,
        `from the root corner to the toe on the ${plate} plate, ${at} mm from the datum end`,
      ),
      wrong: positive([
        measuredChoice(across.value, `that is the leg on the ${other} plate`),
        measuredChoice(throat.value, "that is the throat, which the other side of the gauge shows"),
        measuredChoice(leg.value * Math.SQRT2, "that takes the measured leg for a throat and multiplies it by √2"),
        measuredChoice(Math.hypot(leg.value, across.value), "that is the width of the face from toe to toe"),
        ...misread(
          leg.value,
          tolerance,
          "that stops short of the toe: the slide met the face of the weld",
          "that runs past the toe, or the sole did not lie on the plate",
        ),
      ]),
      place: { face: "fillet", start: at, end: at },
    };
  },
};
