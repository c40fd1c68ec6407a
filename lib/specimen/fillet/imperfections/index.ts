import type { RandomStream } from "../../../random";
import { buildFeature } from "../../imperfections";
import { buildOverlap } from "../../imperfections/overlap";
import type { Feature, FeatureRequest } from "../../work";
import { excessiveAsymmetry, excessiveConvexity, excessiveThroat, insufficientThroat } from "./shapes";
import { toeFusion } from "./toe-fusion";

export { overlapItem } from "./overlap-item";

/** Builds what a request asks of a fillet: its own shapes, and whatever a butt joint can have too. */
export function buildFilletFeature(request: FeatureRequest, random: RandomStream, requiredThroat: number): Feature {
  switch (request.type) {
    case "excessive-convexity":
      return excessiveConvexity(request, random, requiredThroat);
    case "excessive-asymmetry":
      return excessiveAsymmetry(request, random, requiredThroat);
    case "insufficient-throat":
      return insufficientThroat(request, random, requiredThroat);
    case "excessive-throat":
      return excessiveThroat(request, random, requiredThroat);
    case "overlap":
      return { ...buildOverlap(request, random), measure: undefined };
    case "sidewall-fusion":
      return toeFusion(request, random);
    default:
      return buildFeature(request, random);
  }
}
