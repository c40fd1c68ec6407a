import { roundTo } from "../../math";
import type { RandomStream } from "../../random";
import {
  BUTT_PLATE_LENGTH,
  BUTT_PLATE_WIDTH,
  type ButtJoint,
  POSITIONS,
  type Position,
  PROCESSES,
  type Process,
} from "../../weld";
import type { PlateSetting } from "../parent";
import { PROCESS_STYLES } from "../runs";

/** What a joint may be drawn from: processes, positions, and plate thickness from least to most, whole mm. */
export interface JointChoice {
  readonly processes: readonly Process[];
  readonly positions: readonly Position[];
  readonly thickness: readonly [least: number, most: number];
}

export const ANY_JOINT: JointChoice = { processes: PROCESSES, positions: POSITIONS, thickness: [6, 25] };

/** How often each is met in a workshop. Common practice, no source. */
const PROCESS_SHARES: Readonly<Record<Process, number>> = { "111": 0.4, "135": 0.2, "136": 0.2, "141": 0.2 };
const POSITION_SHARES: Readonly<Record<Position, number>> = { PA: 0.4, PC: 0.2, PF: 0.25, PE: 0.15 };
/** Plates of usual thickness, mm, against thinner and thicker ones; TIG fills no thick plate. */
const USUAL_THICKNESS = { least: 8, most: 15, share: 1, thinner: 0.6, thicker: 0.3 };
const THICK_FOR_TIG = { above: 12, share: 0.06 };

/** Widest groove at the surface, mm of half width: the cap must lie within the fine strip, so thicker plates get steeper bevels. */
const WIDEST_GROOVE = 11;
const STEEPEST = 40;

/**
 * Single V of the processes, positions and thicknesses chosen; gap, root face and angle as usual for the process, the groove
 * never wider than 22 mm or steeper than 40 degrees. Common practice, no source. Throws where nothing is to choose from.
 */
export function drawJoint(random: RandomStream, choice: JointChoice = ANY_JOINT): ButtJoint {
  const process = drawWeighted(random.child("process"), choice.processes, (one) => PROCESS_SHARES[one]);
  const position = drawWeighted(random.child("position"), choice.positions, (one) => POSITION_SHARES[one]);
  const thickness = drawThickness(random.child("thickness"), process, choice.thickness);
  const { gap, face, angle } = PROCESS_STYLES[process].preparation;
  const rootGap = roundTo(random.uniform(...gap), 0.1);
  const rootFace = roundTo(random.uniform(...face), 0.1);
  const widest = (Math.atan((WIDEST_GROOVE - rootGap / 2) / (thickness - rootFace)) * 360) / Math.PI;
  const most = Math.max(STEEPEST, Math.min(angle[1], widest));
  return {
    kind: "butt",
    process,
    position,
    length: BUTT_PLATE_LENGTH,
    width: BUTT_PLATE_WIDTH,
    thickness,
    grooveAngle: Math.floor(random.uniform(Math.min(angle[0], Math.max(STEEPEST, most - 3)), most)),
    rootGap,
    rootFace,
  };
}

function drawThickness(random: RandomStream, process: Process, [least, most]: JointChoice["thickness"]): number {
  const all = Array.from({ length: most - least + 1 }, (_, n) => least + n);
  const { share, thinner, thicker } = USUAL_THICKNESS;
  return drawWeighted(random, all, (t) => {
    const usual = t < USUAL_THICKNESS.least ? thinner : t > USUAL_THICKNESS.most ? thicker : share;
    return process === "141" && t > THICK_FOR_TIG.above ? usual * THICK_FOR_TIG.share : usual;
  });
}

/** By how much a plate may be thinner or thicker than nominal below a nominal thickness, mm: EN 10029:1991 class A, as a secondary source has it. */
const MILL_TOLERANCE: readonly { readonly below: number; readonly thinner: number; readonly thicker: number }[] = [
  { below: 5, thinner: 0.4, thicker: 0.8 },
  { below: 8, thinner: 0.4, thicker: 1.1 },
  { below: 15, thinner: 0.5, thicker: 1.2 },
  { below: 25, thinner: 0.6, thicker: 1.3 },
  { below: 40, thinner: 0.8, thicker: 1.4 },
];
/** Most sheets keep within this share of what a mill is allowed. Common practice, no source. */
const MILL_USES = 0.7;

/** What a sheet of a nominal thickness was rolled to, mm. Throws from 40 mm on, which nobody welds here. */
export function drawRolled(nominal: number, random: RandomStream): number {
  const allowed = MILL_TOLERANCE.find(({ below }) => nominal < below);
  if (!allowed) throw new Error(`no mill tolerance for ${nominal} mm`);
  return roundTo(nominal + random.uniform(-MILL_USES * allowed.thinner, MILL_USES * allowed.thicker), 0.001);
}

/** One of the items, each as likely as its weight is of their sum. Throws where there are none. */
function drawWeighted<T>(random: RandomStream, items: readonly T[], weightOf: (item: T) => number): T {
  const last = items[items.length - 1];
  if (last === undefined) throw new Error("nothing to draw from");
  let left = random.uniform(0, 1) * items.reduce((sum, item) => sum + weightOf(item), 0);
  for (const item of items) {
    left -= weightOf(item);
    if (left < 0) return item;
  }
  return last;
}

/** Share of specimens whose plates stand apart by a recordable step, and the steps of both kinds; mm. */
const MISALIGNED = 0.36;
/** Recordable steps that plates are set to, mm. */
export const RECORDABLE_STEPS = [1.2, 2.3] as const;
const STEP = { recordable: RECORDABLE_STEPS, ordinary: [0, 0.55], change: 0.9 } as const;

/** Share of specimens whose plates meet at a recordable angle, and the total angle of both kinds, degrees. */
const DISTORTED = 0.15;
const TOTAL_ANGLE = { recordable: [3.2, 5.5], ordinary: [0.3, 2.2] } as const;

/** How the plates stand: mostly nearly flush; sometimes with a step, over the whole length or growing towards one end. */
export function drawPlates(random: RandomStream): PlateSetting {
  const sign = random.pick([-1, 1]);
  const angles = random.child("angle");
  const [least, most] = angles.chance(DISTORTED) ? TOTAL_ANGLE.recordable : TOTAL_ANGLE.ordinary;
  const distortion = angles.uniform(least, most) / 2;
  if (!random.chance(MISALIGNED)) {
    const step = () => sign * random.uniform(...STEP.ordinary);
    return { stepAtDatum: step(), stepAtFarEnd: step(), distortion };
  }
  const larger = random.uniform(...STEP.recordable);
  const smaller = random.chance(0.5)
    ? larger - random.uniform(0, 0.3)
    : Math.max(0.1, larger - random.uniform(0.8, 1.8));
  const growing = random.chance(0.5);
  return {
    stepAtDatum: sign * (growing ? smaller : larger),
    stepAtFarEnd: sign * (growing ? larger : smaller),
    distortion,
  };
}
