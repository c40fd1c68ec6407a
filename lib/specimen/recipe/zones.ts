import { type Face, grooveHalfWidth } from "../../weld";
import { type FaceLayout, runHalfWidth } from "../runs";
import type { WorkedJoint } from "../work";
import type { FeatureRow } from "./rows";

/** Part of a face that an indication takes up, mm. */
export interface Zone {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
  /** How far beyond x0 and x1 the weld is still changed by it. */
  readonly room: number;
}

/** Two indications lie at least this far apart along the weld, or this far across; mm. */
export const APART = { along: 25, across: 12 };
/** Nothing is planted nearer than this to an end of the weld, mm. */
export const FROM_ENDS = 12;

const gapAlong = (a: Zone, b: Zone): number => Math.max(a.x0 - b.x1, b.x0 - a.x1);
export const gapAcross = (a: Zone, b: Zone): number => Math.max(a.y0 - b.y1, b.y0 - a.y1);
export const areApart = (a: Zone, b: Zone): boolean =>
  gapAlong(a, b) >= Math.max(APART.along, a.room + b.room) || gapAcross(a, b) >= APART.across;

/** Clutter keeps at least this far from everything along the weld, or across; mm: it is to be seen beside nothing else. */
export const CLUTTER_APART = { along: 12, across: 6 };
export const isClutterApart = (a: Zone, b: Zone): boolean =>
  gapAlong(a, b) >= Math.max(CLUTTER_APART.along, a.room + b.room) || gapAcross(a, b) >= CLUTTER_APART.across;

/** How far what is measured may go beyond what was asked, mm. */
export const UNSURE = 1.5;
/** How a toe wavers, and how far imperfections of the toe reach out from it and in over the weld; mm. */
const TOE = { wavers: 0.8, out: 3, in: 1.5 };
/** Marks on the plate begin this far outside the toe and end here, mm: they stay within the fine strip. */
export const ON_PLATE = { clear: 1, limit: 23 };

/** Where the runs of a face lie, mm: outer toes and middle lines of the runs from plate B's side. */
export interface Lanes {
  readonly toe: number;
  readonly halfWidth: number;
  readonly middles: readonly number[];
}

export function lanesOf(face: Face, joint: WorkedJoint, layout: FaceLayout): Lanes {
  const count = layout.runs.length;
  const toe = (face === "cap" ? grooveHalfWidth(joint) : joint.rootGap / 2) + layout.overlap;
  const halfWidth = runHalfWidth(toe, count);
  const outermost = toe - halfWidth;
  const middles = layout.runs.map((_, n) => (count === 1 ? 0 : -outermost + (2 * outermost * n) / (count - 1)));
  return { toe, halfWidth, middles };
}

/** Where an indication is to lie, mm. */
export interface Place {
  readonly x: number;
  readonly length: number;
  readonly side: 1 | -1;
  readonly run: number;
  /** Middle across, for marks on the plate that can be put anywhere. */
  readonly y?: number;
  /** Ordinary stop that this one replaces, or just after which it lies. */
  readonly stop?: number;
}

/** The zone of an indication of a row at a place. */
export function zoneOf(row: FeatureRow, lanes: Lanes, place: Place): Zone {
  const { x, length, side, run } = place;
  const along = { x0: x - UNSURE, x1: x + length + UNSURE, room: row.room };
  const sided = (from: number, to: number) =>
    side > 0 ? { ...along, y0: from, y1: to } : { ...along, y0: -to, y1: -from };
  const whole = lanes.toe + TOE.wavers;
  switch (row.site) {
    case "toe":
      return row.face === "root" ? { ...along, y0: -whole, y1: whole } : sided(lanes.toe - TOE.in, lanes.toe + TOE.out);
    case "plate":
      return place.y === undefined
        ? sided(lanes.toe + ON_PLATE.clear, ON_PLATE.limit)
        : { ...along, y0: place.y - (row.half ?? 0), y1: place.y + (row.half ?? 0) };
    case "weld":
      return { ...along, y0: -whole, y1: whole };
    case "run":
    case "stop":
      return { ...along, y0: lanes.middles[run] - lanes.halfWidth, y1: lanes.middles[run] + lanes.halfWidth };
  }
}
