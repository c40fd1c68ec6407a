import { columnX, sampleAt } from "../../surface";
import { CONTACT_RISE, edgeOfWeld, SEARCH_FROM } from "./edge-of-weld";
import type { Finished, Measured, Range, Side } from "./finished";
import { plateBeside } from "./plate-line";
import { columnsIn, gather, type Sounding } from "./sounding";

/** The flank is taken from the weld's edge to this far inside it, mm. */
const FLANK = 0.6;
/** Angles are averaged over this half length along the weld: one scallop's front is no steep toe, mm. */
const AVERAGED = 1;

/** How a steep toe is looked for. */
export interface ToeSearch {
  readonly side: Side;
  /** mm along the weld. */
  readonly range: Range;
  /** Steeper than this counts, degrees above the plate. */
  readonly threshold: number;
  /** mm */
  readonly bridge: number;
}

/**
 * Steepness of a toe: the angle above the plate's line of the straight line from the weld's edge (0.12 mm above the
 * plate) to the surface 0.6 mm inside it, averaged over +-1 mm. ISO 5817 judges the angle between plate and weld, which
 * is 180 degrees less this one (at least 90 degrees for D, 110 for C, 150 for B on butt welds; from memory). Size =
 * largest angle, degrees; start and end = longest stretch steeper than the threshold.
 */
export function measureSteepToe(face: Finished, search: ToeSearch): Measured | null {
  const { strip } = face;
  const { perMm } = strip.grid;
  const { from, to } = search.range;
  const raw = columnsIn(strip, { from: from - AVERAGED, to: to + AVERAGED }).map((i) => flankAt(face, search.side, i));
  const reach = Math.round(AVERAGED * perMm);
  const soundings = raw
    .slice(reach, raw.length - reach)
    .map((sounding, n): Sounding => ({ ...sounding, value: meanAngle(raw.slice(n, n + 2 * reach + 1)) }));
  return gather(soundings, perMm, search.threshold, search.bridge);
}

function flankAt(face: Finished, side: Side, i: number): Sounding {
  const { grid, z } = face.strip;
  const x = columnX(grid, i);
  const toe = side < 0 ? face.toeMinus : face.toePlus;
  const plate = plateBeside(face, side, x);
  const y = edgeOfWeld(face.strip, i, plate, side, toe[i] + side * SEARCH_FROM);
  const inside = y - side * FLANK;
  const rise = sampleAt(grid, z, x, inside) - plate(inside) - CONTACT_RISE;
  const value = (Math.atan2(rise, FLANK) * 180) / Math.PI;
  return { x, value, y, low: Math.min(y, inside), high: Math.max(y, inside) };
}

function meanAngle(soundings: readonly Sounding[]): number {
  const angles = soundings.map(({ value }) => value).filter((value) => !Number.isNaN(value));
  return angles.reduce((sum, angle) => sum + angle, 0) / angles.length;
}
