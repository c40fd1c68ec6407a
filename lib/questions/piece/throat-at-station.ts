import { DEFAULT_DIMENSION_TOLERANCES } from "../../results";
import { isFilletTruth } from "../../specimen";
import { FILLET_STATIONS } from "../../weld";
import type { Kind } from "../kind";
import { measuredChoice, positive } from "../numbers";
import { dimensionOf, misread } from "./plate-dimension";

export const throatAtStation: Kind = {
  name: "throat-at-station",
  source: "piece",
  sections: ["fillet"],
  draft: ({ truth }, random) => {
    if (!isFilletTruth(truth)) return null;
    const station = 1 + random.integer(FILLET_STATIONS);
    const throat = dimensionOf(truth, "throat", station);
    const base = dimensionOf(truth, "base-leg", station);
    const standing = dimensionOf(truth, "standing-leg", station);
    if (!throat || !base || !standing) return null;
    const tolerance = DEFAULT_DIMENSION_TOLERANCES.throat;
    const at = truth.stations[station - 1];
    return {
      stem: `What does a throat gauge show along the bisector at station ${station}?`,
      tolerance,
      right: measuredChoice(
        throat.value,
        `from the root corner to the face along the bisector, ${at} mm from the datum end`,
      ),
      wrong: positive([
        measuredChoice(base.value, "that is the leg on the base plate"),
        measuredChoice(standing.value, "that is the leg on the standing plate"),
        measuredChoice(throat.value / Math.SQRT2, "that divides a throat by √2 as if it were a leg"),
        measuredChoice(throat.value * Math.SQRT2, "that is the leg which an even face with this throat would have"),
        ...misread(
          throat.value,
          tolerance,
          "that reads low: the gauge stood askew to the corner",
          "that reads high: a shoulder stood on spatter or on the toe",
        ),
      ]),
      place: { face: "fillet", start: at, end: at },
    };
  },
};
