import type { Degrees, Mm } from "../math";
import type { FilletPosition, Process } from "./joint";

/** Processes of ISO 4063 with which a fillet is welded here. */
export const FILLET_PROCESSES = ["111", "135", "136"] as const satisfies readonly Process[];
export type FilletProcess = (typeof FILLET_PROCESSES)[number];

/** Size of a fillet as the drawing gives it (ISO 2553, from memory): "a" before a throat, "z" before a leg. */
export interface FilletSize {
  readonly symbol: "a" | "z";
  readonly value: Mm;
}

/**
 * A T-joint: the standing plate square on the base plate, welded on one side. Lengths in mm. In position PB the base plate
 * lies level; in PA both plates slope, so that the weld lies flat between them; in PF the weld climbs.
 */
export interface FilletJoint {
  readonly kind: "fillet";
  readonly process: FilletProcess;
  readonly position: FilletPosition;
  /** Along the weld, x from 0 (datum end) to length. */
  readonly length: Mm;
  readonly baseThickness: Mm;
  readonly standingThickness: Mm;
  readonly size: FilletSize;
  /** Between the plates. */
  readonly angle: Degrees;
}

/** Throat that a drawing asks for, mm: a itself, or z / sqrt 2 for equal legs at 90 degrees. */
export const requiredThroat = ({ symbol, value }: FilletSize): Mm => (symbol === "a" ? value : value / Math.SQRT2);

/** Leg that a drawing asks for, mm: z itself, or a sqrt 2 for equal legs at 90 degrees. */
export const requiredLeg = ({ symbol, value }: FilletSize): Mm => (symbol === "z" ? value : value * Math.SQRT2);

export const FILLET_LENGTH: Mm = 200;

/** What is seen of both plates to each side of the line between them, mm across (68 mm of plate). */
export const FILLET_HALF_WIDTH: Mm = 48;

/** What is seen square on one of its plates: so far from the root corner along it, and so far past the other plate's face, mm. */
export const FILLET_PLATE_SEEN: Mm = 66;
export const FILLET_PLATE_BEYOND: Mm = 2;
