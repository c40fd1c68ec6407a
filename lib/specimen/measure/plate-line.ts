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

/** Heights z felt at places y across, mm; the first `count` of each count. */
interface Probes {
  readonly y: Float64Array;
  readonly z: Float64Array;
  count: number;
}

/** More probes than any line is fitted to. */
const MOST_PROBES = 512;
const emptyProbes = (): Probes => ({ y: new Float64Array(MOST_PROBES), z: new Float64Array(MOST_PROBES), count: 0 });
/** Thousands of lines are fitted on every face, one after the other: all in the same memory. */
const FELT = emptyProbes();
const KEPT = emptyProbes();
const DEVIATIONS = new Float64Array(MOST_PROBES);

interface Line {
  readonly level: number;
  readonly slope: number;
}

function leastSquares({ y, z, count }: Probes): Line {
  let sumY = 0;
  let sumZ = 0;
  for (let n = 0; n < count; n++) {
    sumY += y[n];
    sumZ += z[n];
  }
  const meanY = sumY / count;
  const meanZ = sumZ / count;
  let spread = 0;
  let rising = 0;
  for (let n = 0; n < count; n++) {
    const off = y[n] - meanY;
    spread += off * off;
    rising += off * (z[n] - meanZ);
  }
  const slope = rising / spread;
  return { level: meanZ - slope * meanY, slope };
}

/** Writes how far each height lies above a line to `DEVIATIONS`, mm, and gives their median. */
function deviateFrom({ level, slope }: Line, { y, z, count }: Probes): number {
  for (let n = 0; n < count; n++) DEVIATIONS[n] = z[n] - level - slope * y[n];
  return median(DEVIATIONS, count);
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
  const { grid, z } = field;
  FELT.count = 0;
  for (let out = probed.from; out <= probed.to + 1e-9; out += PROBE_STEP) {
    const place = toeY + side * out;
    for (let n = 0; n < PROBE_COLUMNS.length; n++) feel(place, sampleAt(grid, z, x + PROBE_COLUMNS[n], place));
  }
  const { level, slope } = robustLine(FELT);
  return (y) => level + slope * y;
}

function feel(y: number, z: number): void {
  FELT.y[FELT.count] = y;
  FELT.z[FELT.count++] = z;
}

/** Straight line through heights felt at places y across, both in mm: see `robustLine`. No more than 512 of them. */
export function lineThrough(y: readonly number[], z: readonly number[]): Line {
  FELT.count = 0;
  for (let n = 0; n < y.length; n++) feel(y[n], z[n]);
  return robustLine(FELT);
}

/**
 * Straight line through heights: least squares, once more without the points that lie further off than three median
 * deviations, then shifted so that the median of what is left lies on it.
 */
function robustLine(probes: Probes): Line {
  const { y, z, count } = probes;
  const line = leastSquares(probes);
  const centre = deviateFrom(line, probes);
  let areAllNear = true;
  for (let n = 0; n < count; n++) {
    DEVIATIONS[n] = Math.abs(DEVIATIONS[n] - centre);
    if (!(DEVIATIONS[n] <= OUTLIER * LEAST_DEVIATION)) areAllNear = false;
  }
  // no point can be left out, and the same would come out again: so it is on most plates
  if (areAllNear) return { level: line.level + centre, slope: line.slope };
  const limit = OUTLIER * Math.max(LEAST_DEVIATION, median(DEVIATIONS, count));
  KEPT.count = 0;
  for (let n = 0; n < count; n++) {
    // one that is not a number is off too
    if (!(DEVIATIONS[n] <= limit)) continue;
    KEPT.y[KEPT.count] = y[n];
    KEPT.z[KEPT.count++] = z[n];
  }
  const fine = leastSquares(KEPT);
  return { level: fine.level + deviateFrom(fine, KEPT), slope: fine.slope };
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
