import type { RandomStream } from "../../random";
import type { FaceWork, Feature, FeatureBuilder, FeatureRequest } from "../work";
import { cutGasHole, drawGasHole, type GasHole, type HoleTrace, paintGasHole } from "./gas-hole";
import { measuredHole } from "./measured-hole";
import { placeOnRun, runIndex } from "./visible-run";

function buildPore(request: FeatureRequest, random: RandomStream, harmless: boolean): Feature {
  let hole: GasHole | null = null;
  let trace: HoleTrace = [];
  return {
    id: request.id,
    cut(work: FaceWork) {
      const y = request.y ?? placeOnRun(work, runIndex(work, request), request.x, random.child("place"), 0.55);
      hole = drawGasHole(random.child("hole"), request.x, y, request.severity);
      trace = cutGasHole(work.strip, hole);
    },
    paint(work) {
      if (hole) paintGasHole(work.strip, hole, trace);
    },
    measure: (work) => (hole ? measuredHole(work, request.id, "surface-pore", hole, harmless) : null),
  };
}

/**
 * A single pore, `severity` mm across at the mouth, at `x` on a run (or at `y`). Truth: size = mouth diameter of the
 * finished hole, place = middle of the mouth.
 */
export const surfacePore: FeatureBuilder = (request, random) => buildPore(request, random, false);

/** Harmless: a single pore too fine to be recorded, `severity` mm across (0.2 to 0.42). Its truth is a neutral surface pore. */
export const buildFinePore: FeatureBuilder = (request, random) => buildPore(request, random, true);
