import type { RandomStream } from "../../random";
import { type ButtJoint, type Face, grooveHalfWidth } from "../../weld";
import { type FaceLayout, type RunStops, runHalfWidth } from "../runs";

/** Weld a bead this much thicker plate at most as one weave, mm; above it two or three stringers. */
const WEAVE_UP_TO = { thickness: 10.5, half: 8.6 };
/** Widest of two stringers side by side, mm of half width. */
const WIDEST_STRINGER = 5.6;
const OVERLAP = { cap: [1.2, 2.2], root: [0.9, 1.25] } as const;
/** Run-out length of an electrode, mm. */
const ELECTRODE = { stringer: [150, 250], weave: [108, 180], root: [130, 220] } as const;
/** How far inside the plate's end a run begins and finishes, before its rounding; less than 0 where tabs were cut off; mm. */
const ENDS = { cap: [-1.5, 2.5], root: [-2, 0.8] } as const;
/** Stops of different runs are staggered by at least this, mm. */
const STAGGERED = 24;
/** No stop nearer to the weld's end, mm. */
const LAST_STOP = 30;

/** Runs of both faces: how many, how wide, in which direction, and where electrodes were changed. */
export function drawLayouts(joint: ButtJoint, random: RandomStream): Record<Face, FaceLayout> {
  return {
    cap: drawCap(joint, random.child("cap")),
    root: drawRoot(joint, random.child("root")),
  };
}

function drawCap(joint: ButtJoint, random: RandomStream): FaceLayout {
  const overlap = random.uniform(...OVERLAP.cap);
  const half = grooveHalfWidth(joint) + overlap;
  const count = runCount(joint.thickness, half, random);
  const lengths = count === 1 ? ELECTRODE.weave : ELECTRODE.stringer;
  const direction = drawDirection(random);
  return { direction, overlap, runs: drawRuns(joint, count, ENDS.cap, lengths, direction, random.child("stops")) };
}

function drawRoot(joint: ButtJoint, random: RandomStream): FaceLayout {
  const overlap = random.uniform(...OVERLAP.root);
  const direction = drawDirection(random);
  return {
    direction,
    overlap,
    runs: drawRuns(joint, 1, ENDS.root, ELECTRODE.root, direction, random.child("stops")),
  };
}

/** Most welders start at the datum end. */
const drawDirection = (random: RandomStream): 1 | -1 => (random.chance(0.75) ? 1 : -1);

function runCount(thickness: number, half: number, random: RandomStream): number {
  const canWeave = thickness <= WEAVE_UP_TO.thickness && half <= WEAVE_UP_TO.half;
  if (canWeave && random.chance(0.55)) return 1;
  if (runHalfWidth(half, 2) > WIDEST_STRINGER) return 3;
  return thickness > 11 && random.chance(0.5) ? 3 : 2;
}

function drawRuns(
  joint: ButtJoint,
  count: number,
  ends: readonly [number, number],
  lengths: readonly [number, number],
  direction: 1 | -1,
  random: RandomStream,
): RunStops[] {
  const taken: number[] = [];
  return Array.from({ length: count }, (_, n) => {
    const own = random.child(`run/${n}`);
    const begin = own.uniform(...ends);
    const finish = own.uniform(...ends);
    const from = direction > 0 ? begin : finish;
    const to = joint.length - (direction > 0 ? finish : begin);
    const stops = drawStops(from, to, direction, lengths, taken, own);
    taken.push(...stops);
    return { from, to, stops };
  });
}

const TRIES = 60;

/** Places where an electrode was used up, in order along the weld, clear of the stops of other runs. */
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
    let welded = random.uniform(...lengths);
    while (welded < to - from - LAST_STOP) {
      stops.push(direction > 0 ? from + welded : to - welded);
      welded += random.uniform(...lengths);
    }
    const clear = stops.every(
      (stop) => stop > LAST_STOP && taken.every((other) => Math.abs(other - stop) >= STAGGERED),
    );
    if (clear) return stops.sort((a, b) => a - b);
  }
  return [];
}
