import type { ImperfectionType } from "../imperfections";
import { median } from "../math";
import { frontOf } from "./imperfections/electrode-stop";
import { truthItem } from "./imperfections/found";
import { measuredRestart } from "./imperfections/restart-profile";
import { placeOnRun, visibleRun } from "./imperfections/visible-run";
import { angleBetweenPlates, type Finished, longestStretch, stepBetweenPlates } from "./measure";
import type { RunPlan } from "./plan";
import { toeAt } from "./runs/edit";
import type { Point, TruthItem } from "./truth";
import type { FaceWork } from "./work";

/** A misalignment is felt every so many mm; from `least` on a stretch belongs to it. */
interface Probing {
  readonly every: number;
  readonly least: number;
}
/** mm */
const STEP: Probing = { every: 2, least: 1 };
/** Degrees in all. */
const ANGLE: Probing = { every: 5, least: 3 };
/** Sound stretches up to this length do not end a misalignment, mm. */
const BRIDGE = 15;
/** Nothing is felt on the last few mm, where the plate's lines are worn. */
const FROM_ENDS = 4;

/** What is felt at x, whichever plate stands higher and whichever way they are bent. */
interface Felt {
  readonly x: number;
  readonly value: number;
}

/**
 * Linear misalignment of the plates, measured on the finished cap: the step between the straight lines of both plates at the
 * joint's centre (`stepBetweenPlates`), as the straight line along the joint on which most of what is felt lies
 * (`steadyLine`): plates are stiff, and what is ground away beside the weld is no misalignment. Size = largest step; extent =
 * longest stretch of 1 mm or more. Null where that stretch is shorter than the catalogue records: a step is there along a
 * joint or it is none.
 */
export const measuredMisalignment = (work: FaceWork, id: string): TruthItem | null =>
  standingItem(work, id, "linear-misalignment", probeSteps(work, work.joint.length), STEP);

/**
 * Angular misalignment of the plates, measured on the finished cap: the angle at which the straight lines of both plates
 * meet (`angleBetweenPlates`), running median over 120 mm. Extent = longest stretch of 3 degrees or more, whichever way
 * they are bent; no size, `worst` where the angle is largest. Null where that stretch is shorter than the catalogue records.
 */
export function measuredAngle(work: FaceWork, id: string): TruthItem | null {
  const felt = probeAngles(work).map(({ x, angle }): Felt => ({ x, value: Math.abs(angle) }));
  return standingItem(work, id, "angular-misalignment", felt, ANGLE);
}

/** The longest stretch of what is felt, from end to end of the joint where it reaches the first or last place felt. */
function standingItem(
  work: FaceWork,
  id: string,
  type: ImperfectionType,
  felt: readonly Felt[],
  { every, least }: Probing,
): TruthItem | null {
  const stretch = longestStretch(
    felt.map(({ value }) => value >= least),
    BRIDGE / every,
  );
  if (!stretch) return null;
  const within = felt.slice(stretch.first, stretch.last + 1);
  const worst = within.reduce((a, b) => (b.value > a.value ? b : a));
  const start = stretch.first === 0 ? 0 : within[0].x;
  const end = stretch.last === felt.length - 1 ? work.joint.length : within[within.length - 1].x;
  const item = truthItem(work, id, type, {
    start,
    end,
    across: 0,
    size: worst.value,
    width: null,
    worst: [worst.x, 0],
    outline: alongBothToes(work, start, end),
  });
  return item.neutral ? null : item;
}

/** A place's angle is the median of what is felt so far to both sides, mm: dents, scale and rolling waves are no distortion. */
const ANGLE_EVENED_OVER = 60;

/** The total angle of the plates along a finished face, degrees: what `measuredAngle` goes by. */
export function probeAngles(work: Pick<FaceWork, "joint" | "sides"> & Finished): { x: number; angle: number }[] {
  const felt: { x: number; angle: number }[] = [];
  for (let x = FROM_ENDS; x <= work.joint.length - FROM_ENDS; x += ANGLE.every) {
    const angle = angleBetweenPlates(work, work.sides, x);
    if (!Number.isNaN(angle)) felt.push({ x, angle });
  }
  const reach = ANGLE_EVENED_OVER / ANGLE.every;
  return felt.map(({ x }, n) => ({
    x,
    angle: median(felt.slice(Math.max(0, n - reach), n + reach + 1).map(({ angle }) => angle)),
  }));
}

/** The step between the plates along a finished cap, mm: what `measuredMisalignment` goes by. */
export function probeSteps(face: Finished, length: number): Felt[] {
  const felt: { x: number; step: number }[] = [];
  for (let x = FROM_ENDS; x <= length - FROM_ENDS; x += STEP.every) felt.push({ x, step: stepBetweenPlates(face, x) });
  const line = steadyLine(felt);
  return felt.map(({ x }) => ({ x, value: Math.abs(line(x)) }));
}

/** Straight line by repeated medians (Siegel 1982): up to nearly half of the points may lie anywhere. */
function steadyLine(points: readonly { x: number; step: number }[]): (x: number) => number {
  const slope = median(
    points.map((a) => median(points.filter((b) => b !== a).map((b) => (b.step - a.step) / (b.x - a.x)))),
  );
  const level = median(points.map(({ x, step }) => step - slope * x));
  return (x) => level + slope * x;
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
