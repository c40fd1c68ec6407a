import { mix } from "../math";
import type { ButtJoint, Face } from "../weld";

/** How the two plates of a joint stand to each other; the same for both faces. */
export interface PlateSetting {
  /** How far plate B lies below plate A, seen from the cap, at x = 0 and at the far end; mm, may be negative. */
  readonly stepAtDatum: number;
  readonly stepAtFarEnd: number;
  /** Angular distortion: by how many degrees each plate rises away from the weld, seen from the cap. */
  readonly distortion: number;
}

/** Step from plate A down to plate B at x, seen from the cap, mm. */
export function stepAt(joint: Pick<ButtJoint, "length">, plates: PlateSetting, x: number): number {
  return mix(plates.stepAtDatum, plates.stepAtFarEnd, x / joint.length);
}

/**
 * Height of the plates before any texture, mm outward from the face looked at, 0 on plate A at the weld. What rises
 * on the cap face sinks on the root face, because both are faces of one piece.
 */
export function parentHeight(
  face: Face,
  joint: Pick<ButtJoint, "length">,
  plates: PlateSetting,
  x: number,
  y: number,
): number {
  const outward = face === "cap" ? 1 : -1;
  const slope = Math.tan((plates.distortion * Math.PI) / 180) * Math.abs(y);
  return outward * (slope - (y < 0 ? stepAt(joint, plates, x) : 0));
}
