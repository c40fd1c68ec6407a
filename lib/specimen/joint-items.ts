import { truthItem } from "./imperfections/found";
import { measuredRestart } from "./imperfections/restart-profile";
import { placeOnRun, visibleRun } from "./imperfections/visible-run";
import { type Finished, longestStretch, stepBetweenPlates } from "./measure";
import type { FaceLayout } from "./runs";
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
 * joint's centre (`stepBetweenPlates`). Size = largest step; extent = longest stretch of 1 mm or more. Null where the step
 * nowhere reaches that.
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
  return truthItem(work, id, "linear-misalignment", {
    start,
    end,
    across: 0,
    size: worst.step,
    width: null,
    worst: [worst.x, 0],
    outline: alongBothToes(work, start, end),
  });
}

interface Step {
  readonly x: number;
  /** Height of the step, whichever plate stands higher, mm. */
  readonly step: number;
}

function probeSteps(face: Finished, length: number): Step[] {
  const steps: Step[] = [];
  for (let x = FROM_ENDS; x <= length - FROM_ENDS; x += PROBED_EVERY)
    steps.push({ x, step: Math.abs(stepBetweenPlates(face, x)) });
  return steps;
}

const OUTLINE_STEP = 10;

function alongBothToes(work: FaceWork, start: number, end: number): Point[] {
  const count = Math.max(1, Math.ceil((end - start) / OUTLINE_STEP));
  const places = Array.from({ length: count + 1 }, (_, n) => start + ((end - start) * n) / count);
  const along = (side: 1 | -1) => places.map((x): Point => [x, toeAt(work, side, x, 2)]);
  return [...along(-1), ...along(1).reverse()];
}

/** The ordinary stops of a face: what humps they left. Below the recordable height they are neutral. */
export function measuredStops(work: FaceWork, layout: FaceLayout): TruthItem[] {
  const items: TruthItem[] = [];
  layout.runs.forEach(({ stops }, run) => {
    for (const x of stops) {
      const item = measuredStop(work, run, x, `${work.face}/stop/${items.length + 1}`);
      if (item) items.push(item);
    }
  });
  return items;
}

function measuredStop(work: FaceWork, run: number, x: number, id: string): TruthItem | null {
  const { low, high } = visibleRun(work, run, x);
  const place = { x, y: placeOnRun(work, run, x), halfWidth: (high - low) / 2, shape: "hump" as const };
  return measuredRestart(work, id, place, true);
}
