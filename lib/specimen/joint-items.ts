import { frontOf } from "./imperfections/electrode-stop";
import { truthItem } from "./imperfections/found";
import { measuredRestart } from "./imperfections/restart-profile";
import { placeOnRun, visibleRun } from "./imperfections/visible-run";
import { angleBetweenPlates, type Finished, longestStretch, stepBetweenPlates } from "./measure";
import type { RunPlan } from "./plan";
import { toeAt } from "./runs/edit";
import type { Point, TruthItem } from "./truth";
import type { FaceWork } from "./work";

/** Step from which a stretch belongs to the misalignment, mm; sound stretches up to `BRIDGE` mm do not end it. */
const RECORDABLE_STEP = 1;
const BRIDGE = 15;
/** The step is felt every so many mm, and not on the last few mm, where the plate's lines are worn. */
const PROBED_EVERY = 2;
const FROM_ENDS = 4;

/**
 * Linear misalignment of the plates, measured on the finished cap: the step between the straight lines of both plates at the
 * joint's centre (`stepBetweenPlates`), as the straight line along the joint on which most of what is felt lies
 * (`steadyLine`): plates are stiff, and what is ground away beside the weld is no misalignment. Size = largest step; extent =
 * longest stretch of 1 mm or more. Null where that stretch is shorter than the catalogue records: a step is there along a joint or it is none.
 */
export function measuredMisalignment(work: FaceWork, id: string): TruthItem | null {
  const steps = probeSteps(work, work.joint.length);
  const stretch = longestStretch(
    steps.map(({ step }) => step >= RECORDABLE_STEP),
    BRIDGE / PROBED_EVERY,
  );
  if (!stretch) return null;
  const within = steps.slice(stretch.first, stretch.last + 1);
  const worst = within.reduce((a, b) => (b.step > a.step ? b : a));
  const start = stretch.first === 0 ? 0 : within[0].x;
  const end = stretch.last === steps.length - 1 ? work.joint.length : within[within.length - 1].x;
  const item = truthItem(work, id, "linear-misalignment", {
    start,
    end,
    across: 0,
    size: worst.step,
    width: null,
    worst: [worst.x, 0],
    outline: alongBothToes(work, start, end),
  });
  return item.neutral ? null : item;
}

/** Total angle from which the plates' distortion is recorded, degrees; the plates are felt every so many mm. */
const RECORDABLE_ANGLE = 3;
const ANGLE_EVERY = 5;
/** A place's angle is the median of what is felt so far to both sides, mm: dents, scale and rolling waves are no distortion. */
const ANGLE_EVENED_OVER = 60;

/**
 * Angular misalignment of the plates, measured on the finished cap: the angle at which the straight lines of both plates
 * meet (`angleBetweenPlates`), running median over 120 mm. Extent = longest stretch of 3 degrees or more, whichever way
 * they are bent; no size, `worst` where the angle is largest. Null where that stretch is shorter than the catalogue records.
 */
export function measuredAngle(work: FaceWork, id: string): TruthItem | null {
  const angles = probeAngles(work);
  const stretch = longestStretch(
    angles.map(({ angle }) => Math.abs(angle) >= RECORDABLE_ANGLE),
    BRIDGE / ANGLE_EVERY,
  );
  if (!stretch) return null;
  const within = angles.slice(stretch.first, stretch.last + 1);
  const worst = within.reduce((a, b) => (Math.abs(b.angle) > Math.abs(a.angle) ? b : a));
  const start = stretch.first === 0 ? 0 : within[0].x;
  const end = stretch.last === angles.length - 1 ? work.joint.length : within[within.length - 1].x;
  const item = truthItem(work, id, "angular-misalignment", {
    start,
    end,
    across: 0,
    size: null,
    width: null,
    worst: [worst.x, 0],
    outline: alongBothToes(work, start, end),
  });
  return item.neutral ? null : item;
}

/** The total angle of the plates along a finished face, degrees: what `measuredAngle` goes by. */
export function probeAngles(work: Pick<FaceWork, "joint" | "sides"> & Finished): { x: number; angle: number }[] {
  const felt: { x: number; angle: number }[] = [];
  for (let x = FROM_ENDS; x <= work.joint.length - FROM_ENDS; x += ANGLE_EVERY) {
    const angle = angleBetweenPlates(work, work.sides, x);
    if (!Number.isNaN(angle)) felt.push({ x, angle });
  }
  const reach = ANGLE_EVENED_OVER / ANGLE_EVERY;
  return felt.map(({ x }, n) => ({
    x,
    angle: median(felt.slice(Math.max(0, n - reach), n + reach + 1).map(({ angle }) => angle)),
  }));
}

interface Step {
  readonly x: number;
  /** Height of the step, whichever plate stands higher, mm. */
  readonly step: number;
}

function probeSteps(face: Finished, length: number): Step[] {
  const felt: { x: number; step: number }[] = [];
  for (let x = FROM_ENDS; x <= length - FROM_ENDS; x += PROBED_EVERY)
    felt.push({ x, step: stepBetweenPlates(face, x) });
  const line = steadyLine(felt);
  return felt.map(({ x }) => ({ x, step: Math.abs(line(x)) }));
}

/** Straight line by repeated medians (Siegel 1982): up to nearly half of the points may lie anywhere. */
function steadyLine(points: readonly { x: number; step: number }[]): (x: number) => number {
  const slope = median(
    points.map((a) => median(points.filter((b) => b !== a).map((b) => (b.step - a.step) / (b.x - a.x)))),
  );
  const level = median(points.map(({ x, step }) => step - slope * x));
  return (x) => level + slope * x;
}

function median(values: readonly number[]): number {
  const sorted = values.slice().sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle] : 0.5 * (sorted[middle - 1] + sorted[middle]);
}

const OUTLINE_STEP = 10;

function alongBothToes(work: FaceWork, start: number, end: number): Point[] {
  const count = Math.max(1, Math.ceil((end - start) / OUTLINE_STEP));
  const places = Array.from({ length: count + 1 }, (_, n) => start + ((end - start) * n) / count);
  const along = (side: 1 | -1) => places.map((x): Point => [x, toeAt(work, side, x, 2)]);
  return [...along(-1), ...along(1).reverse()];
}

/**
 * The restarts of a face as welded, and what humps they left. An ordinary one is harmless whatever its hump; one that
 * left the crater before it open is charged as a poor restart from the recordable height on, and neutral below it.
 */
export function measuredStops(work: FaceWork): TruthItem[] {
  const items: TruthItem[] = [];
  work.plan.runs.forEach((run, index) => {
    for (const { x, isCraterOpen } of restartsOf(run)) {
      const item = measuredStop(work, index, x, !isCraterOpen, `${work.face}/stop/${items.length + 1}`);
      if (item) items.push(item);
    }
  });
  return items;
}

interface Restart {
  /** Where the later electrode was started. */
  readonly x: number;
  readonly isCraterOpen: boolean;
}

function restartsOf({ segments, direction }: RunPlan): Restart[] {
  return segments.slice(1).map((later, n) => {
    const front = frontOf(segments[n], direction);
    const x = direction > 0 ? later.a : later.b;
    return { x, isCraterOpen: direction * (x - front) > 0 };
  });
}

function measuredStop(work: FaceWork, run: number, x: number, harmless: boolean, id: string): TruthItem | null {
  const { low, high } = visibleRun(work, run, x);
  const place = { x, y: placeOnRun(work, run, x), halfWidth: (high - low) / 2, shape: "hump" as const };
  return measuredRestart(work, id, place, harmless);
}
