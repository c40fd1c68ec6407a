import type { Degrees, Mm } from "../math";

/** ISO 4063 reference number of the welding process. */
export const PROCESSES = ["111"] as const;
export type Process = (typeof PROCESSES)[number];

/** One single-V butt joint between plates A (y > 0) and B (y < 0). Lengths in mm. */
export interface ButtJoint {
  readonly kind: "butt";
  readonly process: Process;
  /** Along the weld, x from 0 (datum end) to length. */
  readonly length: Mm;
  /** Across both plates, y from -width/2 to width/2. */
  readonly width: Mm;
  readonly thickness: Mm;
  /** Angle between the two bevel faces. */
  readonly grooveAngle: Degrees;
  readonly rootGap: Mm;
  readonly rootFace: Mm;
}

/** Half the opening of the groove at the plate's cap-side surface, mm: gap/2 + (t - c) tan(angle/2). */
export function grooveHalfWidth(joint: ButtJoint): Mm {
  return joint.rootGap / 2 + (joint.thickness - joint.rootFace) * Math.tan((joint.grooveAngle * Math.PI) / 360);
}

export const BUTT_PLATE_LENGTH: Mm = 300;
export const BUTT_PLATE_WIDTH: Mm = 150;
