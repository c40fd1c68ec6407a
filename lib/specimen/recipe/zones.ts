import { type ButtJoint, type Face, grooveHalfWidth } from "../../weld";
import { type FaceLayout, runHalfWidth } from "../runs";
import type { BlueprintRow } from "./blueprint";

/** Part of a face that an indication takes up, mm. */
export interface Zone {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
}

/** Two indications lie at least this far apart along the weld, or this far across; mm. */
export const APART = { along: 25, across: 12 };
/** Nothing is planted nearer than this to an end of the weld, mm. */
export const FROM_ENDS = 12;

export const gapAlong = (a: Zone, b: Zone): number => Math.max(a.x0 - b.x1, b.x0 - a.x1);
export const gapAcross = (a: Zone, b: Zone): number => Math.max(a.y0 - b.y1, b.y0 - a.y1);
export const areApart = (a: Zone, b: Zone): boolean => gapAlong(a, b) >= APART.along || gapAcross(a, b) >= APART.across;

/** How a toe wavers, and how far imperfections of the toe reach out from it and in over the weld; mm. */
const TOE = { wavers: 0.8, out: 3, in: 1.5 };
/** Marks on the plate lie between these distances from the toe, mm; the builders keep them within the fine strip. */
const PLATE = { from: 1, limit: 23 };

/** Where the runs of a face lie, mm: outer toes and middle lines of the runs from plate B's side. */
export interface Lanes {
  readonly toe: number;
  readonly halfWidth: number;
  readonly middles: readonly number[];
}

export function lanesOf(face: Face, joint: ButtJoint, layout: FaceLayout): Lanes {
  const count = layout.runs.length;
  const toe = (face === "cap" ? grooveHalfWidth(joint) : joint.rootGap / 2) + layout.overlap;
  const halfWidth = runHalfWidth(toe, count);
  const outermost = toe - halfWidth;
  const middles = layout.runs.map((_, n) => (count === 1 ? 0 : -outermost + (2 * outermost * n) / (count - 1)));
  return { toe, halfWidth, middles };
}

/** The zone of an indication of a row that begins at x and is `length` mm long. */
export function zoneOf(
  row: BlueprintRow,
  lanes: Lanes,
  place: { readonly x: number; readonly length: number; readonly side: 1 | -1; readonly run: number },
): Zone {
  const { x, length, side, run } = place;
  const along = { x0: x - row.room, x1: x + length + row.room };
  const sided = (from: number, to: number) =>
    side > 0 ? { ...along, y0: from, y1: to } : { ...along, y0: -to, y1: -from };
  const whole = lanes.toe + TOE.wavers;
  switch (row.site) {
    case "toe":
      return row.face === "root" ? { ...along, y0: -whole, y1: whole } : sided(lanes.toe - TOE.in, lanes.toe + TOE.out);
    case "plate":
      return sided(lanes.toe + PLATE.from, PLATE.limit);
    case "weld":
      return { ...along, y0: -whole, y1: whole };
    case "run":
    case "stop":
      return { ...along, y0: lanes.middles[run] - lanes.halfWidth, y1: lanes.middles[run] + lanes.halfWidth };
  }
}
