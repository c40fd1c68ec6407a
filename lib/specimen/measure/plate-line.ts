import { median } from "../../math";
import { sampleAt } from "../../surface";
import type { Finished, Heights, Range, Side } from "./finished";
import { toeNear } from "./toe";

/** Height of a fitted plate at y, mm; straight, so it may be carried on under the weld. */
export type PlateLine = (y: number) => number;

/** Where beside the toe the plate is probed, mm. */
const PLATE_PROBED: Range = { from: 3, to: 9 };
const PROBE_STEP = 0.4;
const PROBE_COLUMNS = [-0.6, 0, 0.6];
/** Points further off than this many median deviations (globules, dents) do not tilt the line. */
const OUTLIER = 3;
const LEAST_DEVIATION = 0.01;

/** A height felt at a place across, mm. */
export interface Probe {
  readonly y: number;
  readonly z: number;
}

function leastSquares(probes: readonly Probe[]): { level: number; slope: number } {
  const n = probes.length;
  const meanY = probes.reduce((sum, p) => sum + p.y, 0) / n;
  const meanZ = probes.reduce((sum, p) => sum + p.z, 0) / n;
  const spread = probes.reduce((sum, p) => sum + (p.y - meanY) ** 2, 0);
  const slope = probes.reduce((sum, p) => sum + (p.y - meanY) * (p.z - meanZ), 0) / spread;
  return { level: meanZ - slope * meanY, slope };
}

/**
 * The plate beside the weld at x, as a straight line across: least squares through heights probed every 0.4 mm from 3 to
 * 9 mm outside the toe (or over `probed`) in the columns at x - 0.6, x and x + 0.6 mm; once more without the points that
 * lie further off than three median deviations; then shifted so that the median of what is left lies on it.
 */
export function plateLine(
  field: Heights,
  side: Side,
  x: number,
  toeY: number,
  probed: Range = PLATE_PROBED,
): PlateLine {
  const probes: Probe[] = [];
  for (let out = probed.from; out <= probed.to + 1e-9; out += PROBE_STEP) {
    const y = toeY + side * out;
    for (const dx of PROBE_COLUMNS) probes.push({ y, z: sampleAt(field.grid, field.z, x + dx, y) });
  }
  const { level, slope } = robustLine(probes);
  return (y) => level + slope * y;
}

/**
 * Straight line through heights: least squares, once more without the points that lie further off than three median
 * deviations, then shifted so that the median of what is left lies on it.
 */
export function robustLine(probes: readonly Probe[]): { readonly level: number; readonly slope: number } {
  const rough = leastSquares(probes);
  const off = (line: { level: number; slope: number }, p: Probe) => p.z - line.level - line.slope * p.y;
  const centre = median(probes.map((p) => off(rough, p)));
  const limit = OUTLIER * Math.max(LEAST_DEVIATION, median(probes.map((p) => Math.abs(off(rough, p) - centre))));
  const kept = probes.filter((p) => Math.abs(off(rough, p) - centre) <= limit);
  const fine = leastSquares(kept);
  const shift = median(kept.map((p) => off(fine, p)));
  return { level: fine.level + shift, slope: fine.slope };
}

/** The toe is averaged over this half length before the plate is probed, so that a scallop does not shift the line. */
const TOE_AVERAGED = 3;

/** `plateLine` beside the toe that the face itself has at x. */
export function plateBeside(face: Finished, side: Side, x: number, probed?: Range): PlateLine {
  return plateLine(face.strip, side, x, toeNear(face, side, x, TOE_AVERAGED), probed);
}

/**
 * The straight line across the joint at x from plate B's line at y = `low` to plate A's at y = `high`: the surface that
 * an ideal flush weld would have between these two places.
 */
export function plateChord(face: Finished, x: number, low: number, high: number): PlateLine {
  const zLow = plateBeside(face, -1, x)(low);
  const zHigh = plateBeside(face, 1, x)(high);
  const slope = (zHigh - zLow) / (high - low);
  return (y) => zLow + slope * (y - low);
}
