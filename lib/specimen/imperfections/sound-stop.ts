import type { RandomStream } from "../../random";
import { nearestColumn } from "../../surface";
import type { FaceWork, Feature, FeatureBuilder, FeatureRequest } from "../work";
import { placeStop, setStart } from "./electrode-stop";
import { measuredRestart, type RestartPlace } from "./restart-profile";
import { runIndex } from "./visible-run";

/**
 * Plans an ordinary, well made stop and restart at the request's x, `filled` (0..1) how far the crater was filled beyond the
 * usual; null where the weld is too short for one.
 */
export function planSoundStop(
  work: FaceWork,
  request: FeatureRequest,
  draw: RandomStream,
  filled = 0,
): RestartPlace | null {
  const run = work.plan.runs[runIndex(work, request)];
  const i = nearestColumn(work.strip.grid, request.x);
  const halfWidth = run.halfWidth[i];
  const small = work.face === "root" ? 0.6 : 1;
  const stop = placeStop(run, request.x);
  if (!stop) return null;
  stop.earlier.crater = draw.uniform(0.45, 0.7) * small * (1 - filled);
  setStart(stop.later, run.direction, request.x - run.direction * draw.uniform(1, 4));
  Object.assign(stop.later, {
    hump: draw.uniform(0.12, 0.28) * small,
    humpLength: draw.uniform(4, 6),
    shift: draw.normal(0, 0.25),
    widen: draw.uniform(0, 0.25),
    wetting: draw.uniform(0.9, 1.8),
    pitchFactor: draw.chance(0.5) ? draw.uniform(0.8, 0.92) : draw.uniform(1.08, 1.25),
    rearRadius: Math.min(4.2, halfWidth * draw.uniform(0.5, 0.8)),
    lapSeed: draw.seed(),
  });
  return { x: request.x, y: run.centre[i], halfWidth, shape: "hump" };
}

/**
 * Harmless: an ordinary, well made stop and restart at `x`: a shallow filled crater, a low hump that wets out, ripples a
 * little finer or coarser. Its truth is a neutral poor restart, or nothing where no hump can be measured.
 */
export const soundStop: FeatureBuilder = (request, random): Feature => {
  const draw = random.child("stop");
  let place: RestartPlace | null = null;
  return {
    id: request.id,
    plan(work) {
      place = planSoundStop(work, request, draw);
    },
    measure: (work) => place && measuredRestart(work, request.id, place, true),
  };
};
