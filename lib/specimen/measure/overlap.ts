import { columnX, rowOf, rowY } from "../../surface";
import type { Finished, Heights, Measured, Range, Side } from "./finished";
import { type PlateLine, plateBeside } from "./plate-line";
import { columnsIn, gather, type Sounding } from "./sounding";

/** Metal this much above the plate belongs to the weld, mm. */
const CONTACT_RISE = 0.12;
/** A rolled lip rises at least LIP_RISE above the plate at LIP_INSIDE from its edge, mm. */
export const LIP_INSIDE = 0.35;
export const LIP_RISE = 0.4;
/** Beyond each end of the range, the toe is taken as sound between these distances, mm. */
const SOUND_TOE: Range = { from: 2, to: 8 };
const SEARCH_FROM = 6;

export interface OverlapSearch {
  readonly side: Side;
  readonly range: Range;
  /** How far the edge must reach out over the sound toe's line, mm. */
  readonly threshold: number;
  readonly bridge: number;
  /** y of the middle of the joint: the edge is looked for between here and 6 mm outside the toe. */
  readonly centre: number;
}

/** Outermost y in a column at which the metal lies more than 0.12 mm above the plate, coming in from outside. */
function edgeOf(field: Heights, i: number, plate: PlateLine, side: Side, outer: number, centre: number): number {
  const { grid, z } = field;
  const step = side > 0 ? -1 : 1;
  const stop = Math.round(rowOf(grid, centre));
  for (let j = Math.round(rowOf(grid, outer)); (stop - j) * step >= 0; j += step) {
    // two rows in succession: a globule's rim or a scratch is no edge
    const y = rowY(grid, j);
    const next = rowY(grid, j + step * 3);
    const rise = z[j * grid.columns + i] - plate(y);
    if (rise > CONTACT_RISE && z[(j + step * 3) * grid.columns + i] - plate(next) > rise) return y;
  }
  return Number.NaN;
}

const median = (values: number[]): number => values.sort((a, b) => a - b)[values.length >> 1];

/**
 * Weld metal rolled out over the plate. In every column the weld's edge is the outermost metal more than 0.12 mm above
 * the plate's line. The sound toe is the straight line between the median edges 2 to 8 mm before and after the range.
 * Overlap is where the edge lies further out than that line by more than the threshold and the lip stands at least
 * 0.4 mm above the plate 0.35 mm inside its edge. Size and width = largest reach.
 */
export function measureOverlap(face: Finished, search: OverlapSearch): Measured | null {
  const { side, range, centre, threshold } = search;
  const { grid } = face.strip;
  const toe = side < 0 ? face.toeMinus : face.toePlus;
  const edgeAt = (i: number) => {
    const x = columnX(grid, i);
    const plate = plateBeside(face, side, x);
    return { x, plate, y: edgeOf(face.strip, i, plate, side, toe[i] + side * SEARCH_FROM, centre) };
  };
  const soundEdge = (part: Range) =>
    median(
      columnsIn(face.strip, part)
        .map((i) => edgeAt(i).y)
        .filter((y) => !Number.isNaN(y)),
    );
  const before = soundEdge({ from: range.from - SOUND_TOE.to, to: range.from - SOUND_TOE.from });
  const after = soundEdge({ from: range.to + SOUND_TOE.from, to: range.to + SOUND_TOE.to });
  const soundings = columnsIn(face.strip, range).map((i): Sounding => {
    const { x, plate, y } = edgeAt(i);
    const sound = before + ((after - before) * (x - range.from)) / (range.to - range.from);
    const inside = y - side * LIP_INSIDE;
    const k = Math.round(rowOf(grid, inside)) * grid.columns + i;
    const hasLip = face.strip.z[k] - plate(inside) >= LIP_RISE;
    const reach = hasLip ? (y - sound) * side : 0;
    return { x, value: reach, y, low: Math.min(y, sound), high: Math.max(y, sound) };
  });
  return gather(soundings, grid.perMm, threshold, search.bridge);
}
