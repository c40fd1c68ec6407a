import type { ImperfectionType } from "../../imperfections";
import type { PlateSetting } from "../parent";

/** From which step (mm) and total angle (degrees) the plates' standing is recorded, and how near to it nobody can foresee. */
const STEP = { from: 1, unsure: 0.12 };
const ANGLE = { from: 3, unsure: 0.15 };

/** What is to be found of how the plates stand, before they are made; null where that cannot be foreseen. */
export interface PlateItem {
  readonly type: ImperfectionType;
  /** Largest step, mm; null for an angle. */
  readonly size: number | null;
}

/** Misalignments that will be measured on the cap, or null where one of them might or might not be. */
export function plateItems({ stepAtDatum, stepAtFarEnd, distortion }: PlateSetting): PlateItem[] | null {
  const step = Math.max(Math.abs(stepAtDatum), Math.abs(stepAtFarEnd));
  const angle = Math.abs(2 * distortion);
  if (Math.abs(step - STEP.from) < STEP.unsure || Math.abs(angle - ANGLE.from) < ANGLE.unsure) return null;
  const items: PlateItem[] = [];
  if (step > STEP.from) items.push({ type: "linear-misalignment", size: step });
  if (angle > ANGLE.from) items.push({ type: "angular-misalignment", size: null });
  return items;
}
