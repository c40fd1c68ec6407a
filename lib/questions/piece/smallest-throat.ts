import { DEFAULT_DIMENSION_TOLERANCES } from "../../results";
import { isFilletTruth } from "../../specimen";
import { requiredThroat } from "../../weld";
import type { Kind } from "../kind";
import { measuredChoice, positive } from "../numbers";
import { wholeMm } from "../words";
import { dimensionOf, misread } from "./plate-dimension";

export const smallestThroat: Kind = {
  name: "smallest-throat",
  source: "piece",
  sections: ["fillet"],
  draft: ({ truth }) => {
    const least = dimensionOf(truth, "smallest-throat");
    const leg = dimensionOf(truth, "smallest-leg");
    if (!isFilletTruth(truth) || !least || !leg || least.at === null) return null;
    const tolerance = DEFAULT_DIMENSION_TOLERANCES["smallest-throat"];
    const atStations = truth.dimensions.filter(({ dimension }) => dimension === "throat");
    return {
      stem: "What is the smallest throat that a gauge shows anywhere along this fillet, its first and last 10 mm left aside?",
      tolerance,
      right: measuredChoice(least.value, `it was measured at ${wholeMm(least.at)} mm from the datum end`),
      wrong: positive([
        ...atStations.map(({ value, station }) => measuredChoice(value, `that is the throat at station ${station}`)),
        measuredChoice(leg.value, "that is the smallest leg"),
        measuredChoice(requiredThroat(truth.joint.size), "that is the throat which the drawing asks for"),
        ...misread(
          least.value,
          tolerance,
          "that reads low: the gauge stood askew to the corner",
          "that reads high: the fillet was measured where it looks large",
        ),
      ]),
      place: { face: "fillet", start: least.at, end: least.at },
    };
  },
};
