import type { RandomStream } from "../../random";
import { nearestColumn } from "../../surface";
import type { Crater, FaceWork, FeatureRequest } from "../work";
import { placeStop, setStart } from "./electrode-stop";
import { runIndex } from "./visible-run";

/** Leaves the crater of an electrode's end open at the requested place: unfilled, and the next length starts beyond it. */
export function leaveCraterOpen(work: FaceWork, request: FeatureRequest, random: RandomStream): void {
  const run = work.plan.runs[runIndex(work, request)];
  const halfWidth = run.halfWidth[nearestColumn(work.strip.grid, request.x)];
  // The crater's middle lies about a third of the half width behind the front.
  const stop = placeStop(run, request.x + run.direction * 0.34 * halfWidth);
  if (!stop) return;
  const front = request.x + run.direction * 0.34 * halfWidth;
  stop.earlier.crater = random.uniform(0.8, 1.15) * (run.weave ? 1.1 : 1);
  setStart(stop.later, run.direction, front + run.direction * halfWidth * random.uniform(0.75, 1));
  Object.assign(stop.later, {
    hump: random.uniform(0.3, 0.6),
    humpLength: 6,
    shift: random.normal(0, 0.25),
    widen: 0.2,
    wetting: random.uniform(1.4, 2.2),
  });
}

/** The crater as laid that is nearest to the requested place, or null if the run has none within 12 mm. */
export function craterNear(work: FaceWork, request: FeatureRequest): Crater | null {
  const run = runIndex(work, request);
  let found: Crater | null = null;
  let distance = 12;
  for (const crater of work.craters) {
    const away = Math.abs(crater.x - request.x);
    if (crater.run === run && away < distance) {
      distance = away;
      found = crater;
    }
  }
  return found;
}
