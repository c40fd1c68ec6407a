import type { RandomStream } from "../../random";
import { type ButtJoint, type Face, grooveHalfWidth } from "../../weld";
import { type FaceLayout, POSITION_STYLES, PROCESS_STYLES, type Range, type RunStops, runHalfWidth } from "../runs";

/** How far the cap's toes lie outside the groove's edges, mm a side. */
const CAP_OVERLAP: Range = [1.2, 2.2];
/** How far inside the plate's end a run begins and finishes, before its rounding; less than 0 where tabs were cut off; mm. */
const ENDS = { cap: [-1.5, 2.5], root: [-2, 0.8] } as const;
/** Stops of different runs are staggered by at least this, mm. */
const STAGGERED = 24;
/** No stop nearer to the weld's end, mm. */
const LAST_STOP = 30;
/** Most stringers of a cap; one more than needed where they would still be this wide, mm of half width. */
const MOST_RUNS = 5;
const ONE_MORE = { share: 0.3, least: 3.9 };

/** Runs of both faces: how many, how wide, in which direction, and where electrodes were changed. */
export function drawLayouts(joint: ButtJoint, random: RandomStream): Record<Face, FaceLayout> {
  return {
    cap: drawCap(joint, random.child("cap")),
    root: drawRoot(joint, random.child("root")),
  };
}

function drawCap(joint: ButtJoint, random: RandomStream): FaceLayout {
  const { stops } = PROCESS_STYLES[joint.process];
  const overlap = random.uniform(...CAP_OVERLAP);
  const half = grooveHalfWidth(joint) + overlap;
  const count = runCount(joint, half, random);
  const lengths = count === 1 ? stops.weave : stops.stringer;
  const direction = drawDirection(joint, random);
  return { direction, overlap, runs: drawRuns(joint, count, ENDS.cap, lengths, direction, random.child("stops")) };
}

function drawRoot(joint: ButtJoint, random: RandomStream): FaceLayout {
  const { root, stops } = PROCESS_STYLES[joint.process];
  const overlap = random.uniform(...root.overlap);
  const direction = drawDirection(joint, random);
  return {
    direction,
    overlap,
    runs: drawRuns(joint, 1, ENDS.root, stops.root, direction, random.child("stops")),
  };
}

/** Most welders start at the datum end; upwards is upwards. */
const drawDirection = (joint: ButtJoint, random: RandomStream): 1 | -1 =>
  random.chance(POSITION_STYLES[joint.position].climbs ? 1 : 0.75) ? 1 : -1;

/** One weave where the plate and the position allow it, else as few stringers as cover the groove, or one more. */
function runCount(joint: ButtJoint, half: number, random: RandomStream): number {
  const { bead } = PROCESS_STYLES[joint.process];
  const { weave, widest } = POSITION_STYLES[joint.position];
  const canWeave = joint.thickness <= weave.thickness && half <= weave.half * bead.widestWeave;
  if (canWeave && random.chance(weave.share)) return 1;
  let count = 2;
  while (count < MOST_RUNS && runHalfWidth(half, count) > widest * bead.widest) count++;
  const canAdd = count < MOST_RUNS && runHalfWidth(half, count + 1) >= ONE_MORE.least * widest;
  return canAdd && random.chance(ONE_MORE.share) ? count + 1 : count;
}

/** Begin, finish and stops of every run of a weld, as long as its electrodes last. */
export function drawRuns(
  joint: Pick<ButtJoint, "process" | "length">,
  count: number,
  ends: readonly [number, number],
  lengths: readonly [number, number],
  direction: 1 | -1,
  random: RandomStream,
): RunStops[] {
  const taken: number[] = [];
  const { share } = PROCESS_STYLES[joint.process].stops;
  return Array.from({ length: count }, (_, n) => {
    const own = random.child(`run/${n}`);
    const begin = own.uniform(...ends);
    const finish = own.uniform(...ends);
    const from = direction > 0 ? begin : finish;
    const to = joint.length - (direction > 0 ? finish : begin);
    const stops = own.chance(share) ? drawStops(from, to, direction, lengths, taken, own) : [];
    taken.push(...stops);
    return { from, to, stops };
  });
}

const TRIES = 60;
const BEGUN = 0.55;

/** Places where the arc was broken off, in order along the weld, clear of the stops of other runs. */
function drawStops(
  from: number,
  to: number,
  direction: 1 | -1,
  lengths: readonly [number, number],
  taken: readonly number[],
  random: RandomStream,
): number[] {
  for (let attempt = 0; attempt < TRIES; attempt++) {
    const stops: number[] = [];
    // the first one may be the rest of an electrode begun elsewhere
    let welded = random.uniform(BEGUN * lengths[0], lengths[1]);
    while (welded < to - from - LAST_STOP) {
      stops.push(direction > 0 ? from + welded : to - welded);
      welded += random.uniform(...lengths);
    }
    // the longer it is looked for in vain, the nearer stops of different runs may lie
    const apart = STAGGERED * (1 - attempt / TRIES);
    const clear = stops.every((stop) => stop > LAST_STOP && taken.every((other) => Math.abs(other - stop) >= apart));
    if (clear) return stops.sort((a, b) => a - b);
  }
  return [];
}
