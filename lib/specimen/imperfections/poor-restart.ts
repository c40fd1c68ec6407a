import { ease, mix } from "../../math";
import type { RandomStream } from "../../random";
import { nearestColumn } from "../../surface";
import type { Face } from "../../weld";
import type { Segment } from "../plan";
import type { FaceWork, Feature, FeatureBuilder, FeatureRequest } from "../work";
import { type ColdLap, cutColdLap, paintColdLap } from "./cold-lap";
import { placeStop, setStart } from "./electrode-stop";
import { measuredRestart, type RestartPlace } from "./restart-profile";
import { runIndex } from "./visible-run";

interface Planned {
  readonly lap: ColdLap;
  readonly place: RestartPlace;
}

const ROOT_SCALE = 0.6;
/** Heights between which a hump turns from little more than an ordinary restart into a cold lump, mm. */
const COLD: Readonly<Record<Face, readonly [from: number, to: number]>> = { cap: [0.7, 2], root: [0.7, 2.2] };
/** The rounded front of a bead reaches about this many half widths beyond its electrode's end. */
const FRONT_REACH = 0.85;
/** Open length between the crater's front and the rear edge of the restart, mm. */
const GAP = { cap: [-0.9, 1.4], root: [0.3, 1.4] } as const;

/** Length over which the new metal wets back over the old: warm and cold, mm. */
const WETTING = { warm: [1.3, 2.2], cold: [0.5, 0.8] } as const;
/** A hump on the root is so much shorter. */
const ROOT_HUMP = 0.75;

const mixed = ({ warm, cold }: typeof WETTING, share: number): [number, number] => [
  mix(warm[0], cold[0], share),
  mix(warm[1], cold[1], share),
];

/** Ends one electrode and starts the next badly: on top of the crater ("hump") or beyond it ("gap"). */
function planRestart(work: FaceWork, request: FeatureRequest, random: RandomStream): Planned | null {
  const index = runIndex(work, request);
  const run = work.plan.runs[index];
  const i = nearestColumn(work.strip.grid, request.x);
  const halfWidth = run.halfWidth[i];
  const scale = work.face === "root" ? ROOT_SCALE : 1;
  const shape = request.variant === "gap" ? "gap" : "hump";
  const cold = shape === "gap" ? random.uniform(0.3, 0.8) : ease(...COLD[work.face], request.severity);
  const rearRadius = Math.min(4.2, halfWidth * random.uniform(0.5, 0.8));
  const [least, most] = GAP[work.face];
  const open = random.uniform(least, most);
  const ahead =
    shape === "gap" ? FRONT_REACH * halfWidth + open + rearRadius : -Math.min(5, halfWidth * random.uniform(0.5, 0.9));
  // The gap, or the hump's crest just behind the new start, comes to lie at x.
  const front =
    request.x - run.direction * (shape === "gap" ? FRONT_REACH * halfWidth + open / 2 : ahead + CREST_BEHIND);
  const stop = placeStop(run, front);
  if (!stop) return null;
  const start = front + run.direction * ahead;
  const shift = (random.chance(0.5) ? 1 : -1) * random.uniform(0.4, 1) * scale * mix(0.5, 1, cold);
  const widen = random.uniform(0.2, 0.7) * scale * mix(0.45, 1, cold);
  const lapSeed = random.seed();
  stop.earlier.crater =
    (shape === "gap" ? random.uniform(1, 1.3) : random.uniform(0.7, 1) * mix(0.65, 1, cold)) * scale;
  setStart(stop.later, run.direction, start);
  Object.assign(stop.later, {
    hump: shape === "gap" ? random.uniform(0.4, 0.7) * scale : request.severity * (run.weave ? 0.8 : 1),
    humpLength: random.uniform(5, 8) * (work.face === "root" ? ROOT_HUMP : 1),
    shift,
    widen,
    wetting: random.uniform(...mixed(WETTING, cold)),
    pitchFactor: mix(1, random.chance(0.5) ? random.uniform(1.3, 1.6) : random.uniform(0.62, 0.78), mix(0.45, 1, cold)),
    rippleFactor: mix(1, random.uniform(1.25, 1.6), mix(0.3, 1, cold)),
    rearRadius,
    lapSeed,
  } satisfies Partial<Segment>);
  const y = run.centre[i];
  return {
    place: { x: request.x, y, halfWidth, shape },
    lap: {
      run: index,
      direction: run.direction,
      x: start,
      y: y + shift,
      halfWidth: halfWidth + widen,
      rearRadius,
      seed: lapSeed,
      fused: random.uniform(0.2, 0.5) + 0.35 * (1 - cold),
      cold,
    },
  };
}

/** The crest of a hump lies about this far into the new electrode length, mm. */
const CREST_BEHIND = 1.5;

/**
 * A bad restart at `x` on a run: variant "hump" (default; the new electrode begun on the old crater and heaped up by
 * about `severity` mm, from about 1 mm on a cold lap with a crease at its rear edge) or "gap" (begun too far ahead, the hollow left between;
 * its depth follows from the run). Truth: a point; size = height of the hump above the run's own mean, or depth of the
 * gap below it, see `measuredRestart`.
 */
export const poorRestart: FeatureBuilder = (request, random): Feature => {
  let planned: Planned | null = null;
  let crease: ReturnType<typeof cutColdLap> = [];
  return {
    id: request.id,
    plan(work) {
      planned = planRestart(work, request, random.child("plan"));
    },
    cut(work) {
      if (planned) crease = cutColdLap(work.strip, planned.lap);
    },
    paint(work) {
      if (planned) paintColdLap(work.strip, planned.lap, crease);
    },
    measure: (work) => planned && measuredRestart(work, request.id, planned.place, false),
  };
};
