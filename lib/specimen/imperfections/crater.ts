import type { RandomStream } from "../../random";
import { nearestColumn } from "../../surface";
import type { Face } from "../../weld";
import type { Segment } from "../plan";
import type { Crater, FaceWork, FeatureRequest } from "../work";
import { placeStop, setStart } from "./electrode-stop";
import { runIndex } from "./visible-run";

/** The crater's middle lies this many half widths behind the electrode's end. */
const MIDDLE_BEHIND = 0.34;
/** The next length laps over the front of the open crater from so many half widths beyond its electrode's end. */
const LAPS_FROM: Readonly<Record<Face, readonly [number, number]>> = { cap: [-0.42, -0.08], root: [-0.75, -0.4] };
/** mm */
const DEPTH: Readonly<Record<"stringer" | "weave" | "root", readonly [number, number]>> = {
  stringer: [0.4, 1.15],
  weave: [0.6, 1.5],
  root: [0.3, 0.8],
};

/** Leaves the crater of an electrode's end open at the requested place: unfilled, the next length only laps its far rim. */
export function leaveCraterOpen(work: FaceWork, request: FeatureRequest, random: RandomStream): void {
  const run = work.plan.runs[runIndex(work, request)];
  const halfWidth = run.halfWidth[nearestColumn(work.strip.grid, request.x)];
  const front = request.x + run.direction * MIDDLE_BEHIND * halfWidth;
  const stop = placeStop(run, front);
  if (!stop) return;
  const rearRadius = Math.min(3.6, halfWidth * random.uniform(0.4, 0.8));
  const kind = work.face === "root" ? "root" : run.weave ? "weave" : "stringer";
  stop.earlier.crater = random.uniform(...DEPTH[kind]);
  const ahead = random.uniform(...LAPS_FROM[work.face]) * halfWidth + rearRadius;
  setStart(stop.later, run.direction, front + run.direction * ahead);
  Object.assign(stop.later, {
    hump: random.uniform(0, 0.3),
    humpLength: random.uniform(4, 8),
    shift: random.normal(0, 0.25),
    widen: random.uniform(0, 0.3),
    wetting: work.face === "root" ? random.uniform(1.2, 2.4) : random.uniform(2.2, 4.2),
    rearRadius,
    lapSeed: random.seed(),
  } satisfies Partial<Segment>);
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
