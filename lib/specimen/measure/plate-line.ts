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

interface Line {
  readonly level: number;
  readonly slope: number;
}

// plain loops: thousands of lines are fitted on every face
function leastSquares(probes: readonly Probe[]): Line {
  const n = probes.length;
  let sumY = 0;
  let sumZ = 0;
  for (const { y, z } of probes) {
    sumY += y;
    sumZ += z;
  }
  const meanY = sumY / n;
  const meanZ = sumZ / n;
  let spread = 0;
  let rising = 0;
  for (const { y, z } of probes) {
    const off = y - meanY;
    spread += off * off;
    rising += off * (z - meanZ);
  }
  const slope = rising / spread;
  return { level: meanZ - slope * meanY, slope };
}

/** How far each height lies above a line, mm. */
function heightsOver({ level, slope }: Line, probes: readonly Probe[]): Float64Array {
  const heights = new Float64Array(probes.length);
  for (let n = 0; n < heights.length; n++) heights[n] = probes[n].z - level - slope * probes[n].y;
  return heights;
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
export function robustLine(probes: readonly Probe[]): Line {
  const deviations = heightsOver(leastSquares(probes), probes);
  const centre = median(deviations);
  for (let n = 0; n < deviations.length; n++) deviations[n] = Math.abs(deviations[n] - centre);
  const limit = OUTLIER * Math.max(LEAST_DEVIATION, median(deviations));
  const kept = probes.filter((_, n) => deviations[n] <= limit);
  const fine = leastSquares(kept);
  return { level: fine.level + median(heightsOver(fine, kept)), slope: fine.slope };
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
