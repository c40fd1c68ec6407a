import { roundTo } from "../../math";
import type { RandomStream } from "../../random";
import { BUTT_PLATE_LENGTH, BUTT_PLATE_WIDTH, type ButtJoint } from "../../weld";
import type { PlateSetting } from "../parent";
import type { Look } from "../work";

/** Widest groove at the surface that the cap's runs can cover, mm of half width: thicker plates get steeper bevels. */
const WIDEST_GROOVE = 9;
const ANGLE = { least: 50, most: 70 };

/** Single V, 8 to 15 mm thick, 50 to 70 degrees, gap 2 to 4 mm, root face 1 to 2 mm. */
export function drawJoint(random: RandomStream): ButtJoint {
  const thickness = 8 + random.integer(8);
  const rootGap = roundTo(random.uniform(2, 4), 0.1);
  const rootFace = roundTo(random.uniform(1, 2), 0.1);
  const widest = (Math.atan((WIDEST_GROOVE - rootGap / 2) / (thickness - rootFace)) * 360) / Math.PI;
  const angle = random.uniform(ANGLE.least, Math.max(ANGLE.least, Math.min(ANGLE.most, widest)));
  return {
    kind: "butt",
    process: "111",
    position: "PA",
    length: BUTT_PLATE_LENGTH,
    width: BUTT_PLATE_WIDTH,
    thickness,
    grooveAngle: roundTo(angle, 1),
    rootGap,
    rootFace,
  };
}

/** Share of specimens whose plates stand apart by a recordable step, and the steps of both kinds; mm. */
const MISALIGNED = 0.36;
const STEP = { recordable: [1.2, 2.3], ordinary: [0, 0.55], change: 0.9 } as const;

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

export function drawLook(random: RandomStream): Look {
  return {
    heatTint: random.uniform(0.6, 1),
    brushed: random.uniform(0.35, 0.75),
    spatter: random.uniform(0.3, 0.8),
    slag: random.uniform(0.3, 0.7),
    rust: random.uniform(0.1, 0.5),
    bandWidth: random.uniform(17, 22),
    ripplePitch: random.uniform(1, 1.3),
    rippleHeight: random.uniform(0.034, 0.05),
  };
}
