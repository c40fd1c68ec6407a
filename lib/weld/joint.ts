import type { Degrees, Mm } from "../math";

/** ISO 4063 reference number of the welding process. */
export const PROCESSES = ["111", "135", "136", "141"] as const;
export type Process = (typeof PROCESSES)[number];

/** What the trade calls the processes, after ISO 4063 (wording from memory). */
export const PROCESS_NAMES: Readonly<Record<Process, string>> = {
  "111": "manual metal arc",
  "135": "active gas, solid wire",
  "136": "active gas, flux-cored wire",
  "141": "TIG",
};

/** Welding positions of ISO 6947 in which a plate is butt-welded here. */
export const POSITIONS = ["PA", "PC", "PF", "PE"] as const;
export type Position = (typeof POSITIONS)[number];

/** Welding positions of ISO 6947 in which a fillet is welded here. */
export const FILLET_POSITIONS = ["PA", "PB", "PF"] as const;
export type FilletPosition = (typeof FILLET_POSITIONS)[number];

export type JointPosition = Position | FilletPosition;

export const POSITION_NAMES: Readonly<Record<JointPosition, string>> = {
  PA: "flat",
  PB: "horizontal vertical",
  PC: "horizontal",
  PF: "vertical up",
  PE: "overhead",
};

/**
 * One single-V butt joint between plates A (y > 0) and B (y < 0). Lengths in mm. In position PC plate A is the upper one;
 * in PF the weld climbs in its welding direction; in PE the cap hangs down.
 */
export interface ButtJoint {
  readonly kind: "butt";
  readonly process: Process;
  readonly position: Position;
  /** Along the weld, x from 0 (datum end) to length. */
  readonly length: Mm;
  /** Across both plates, y from -width/2 to width/2. */
  readonly width: Mm;
  /** Nominal, as on the drawing. */
  readonly thickness: Mm;
  /** Angle between the two bevel faces. */
  readonly grooveAngle: Degrees;
  readonly rootGap: Mm;
  readonly rootFace: Mm;
}

/** Half the opening of the groove at the plate's cap-side surface, mm: gap/2 + (t - c) tan(angle/2). */
export function grooveHalfWidth(joint: Pick<ButtJoint, "rootGap" | "rootFace" | "thickness" | "grooveAngle">): Mm {
  return joint.rootGap / 2 + (joint.thickness - joint.rootFace) * Math.tan((joint.grooveAngle * Math.PI) / 360);
}

export const BUTT_PLATE_LENGTH: Mm = 300;
export const BUTT_PLATE_WIDTH: Mm = 150;
