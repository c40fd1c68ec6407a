import { clamp, ease, mix } from "../../math";
import type { RandomStream } from "../../random";
import type { FaceWork, Feature, FeatureBuilder, FeatureRequest } from "../work";
import { cutGasHole, drawGasHole, type GasHole, type HoleTrace, paintGasHole } from "./gas-hole";
import { measuredHole } from "./measured-hole";
import { runIndex, visibleRun } from "./visible-run";

/**
 * Share of a run's half width over which pores come up, a large one nearer to the middle, and for every third fine one over
 * which: out to the toe or the valley.
 */
const SPREAD = { fine: 0.7, large: 0.55 };
const FINE = { to: 0.6, gone: 1 };
/** Its rim, out to so many diameters, lies on its run. */
const RIM = 1.9;
const AT_THE_SIDE: readonly [number, number] = [0.66, 0.86];

function drawPlace(work: FaceWork, request: FeatureRequest, random: RandomStream): number {
  const { low, high } = visibleRun(work, runIndex(work, request), request.x);
  const large = ease(FINE.to, FINE.gone, request.severity);
  const spread = mix(SPREAD.fine, SPREAD.large, large);
  const within = random.uniform(-spread, spread);
  const isAtSide = random.chance((1 - large) / 3);
  const off = isAtSide ? random.pick([-1, 1]) * random.uniform(...AT_THE_SIDE) : within;
  const free = Math.max(0.1, 1 - (RIM * request.severity) / (high - low));
  return mix(low, high, 0.5 + 0.5 * clamp(off, -free, free));
}

function buildPore(request: FeatureRequest, random: RandomStream, harmless: boolean): Feature {
  let hole: GasHole | null = null;
  let trace: HoleTrace = [];
  return {
    id: request.id,
    cut(work: FaceWork) {
      const y = request.y ?? drawPlace(work, request, random.child("place"));
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

/** Harmless: a single pore too fine to be recorded, `severity` mm across (0.18 to 0.33). Its truth is a neutral surface pore. */
export const buildFinePore: FeatureBuilder = (request, random) => buildPore(request, random, true);
