import type { ImperfectionType } from "../../imperfections";
import { type SizeBand, VISIBILITY } from "../difficulty";
import type { PlateSetting } from "../parent";
import { RECORDABLE_STEPS } from "./joint";
import { isNearLimit } from "./limits";

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

/** What can be found of how the plates stand; on the cap alone, along the whole weld. */
export const PLATE_TYPES = [
  "linear-misalignment",
  "angular-misalignment",
] as const satisfies readonly ImperfectionType[];

/** How far a measured step may lie from the step set, mm. */
const UNSURE = 0.1;

/** The bands in which a step may come out; an angle runs along the whole weld. */
export function bandsOfPlates({ type, size }: PlateItem): SizeBand[] {
  if (size === null) return ["medium"];
  const [smallBelow, largeFrom] = VISIBILITY[type].bands;
  const bandAt = (value: number): SizeBand => (value < smallBelow ? "small" : value < largeFrom ? "medium" : "large");
  return [...new Set([bandAt(size - UNSURE), bandAt(size + UNSURE)])];
}

const STEPS_TRIED = 20;

/** Bands in which plates can be set to stand so, with `clearOfLimits` without those that lie near one. */
export function bandsToBeHad(type: (typeof PLATE_TYPES)[number], clearOfLimits: boolean): SizeBand[] {
  if (type === "angular-misalignment") return ["medium"];
  const [least, most] = RECORDABLE_STEPS;
  const steps = Array.from({ length: STEPS_TRIED + 1 }, (_, n) => least + ((most - least) * n) / STEPS_TRIED);
  const bands = steps
    .filter((size) => !(clearOfLimits && isNearLimit(type, size)))
    .map((size) => bandsOfPlates({ type, size }))
    .filter((all) => all.length === 1);
  return [...new Set(bands.flat())];
}
