import { mix, tabulate } from "../../math";
import { columnX, sampleAt } from "../../surface";
import type { AcrossSearch } from "./crown";
import type { Finished, Measured } from "./finished";
import { columnsIn, gather, type Sounding } from "./sounding";
import { toeNear } from "./toe";

/** Lanes along the weld, evenly spread over the middle share of its width. */
const LANES = { count: 11, share: 0.8 };
/** Toes are averaged over this half length, so that a lane does not climb the bead's side with every scallop, mm. */
const TOE_AVERAGED = 4;
/** Half length over which heights are compared, and their distance, mm. */
const WINDOW = 8;
const STEP = 0.5;
const SPREAD = { low: 0.05, high: 0.95 };

/** Heights along one lane from x0 on, every half millimetre; NaN where there is no weld. */
function laneHeights(face: Finished, x0: number, count: number, share: number): Float32Array {
  const { grid, z } = face.strip;
  return tabulate(count, (n) => {
    const x = x0 + n * STEP;
    const low = toeNear(face, -1, x, TOE_AVERAGED);
    const high = toeNear(face, 1, x, TOE_AVERAGED);
    return Number.isNaN(low + high) ? Number.NaN : sampleAt(grid, z, x, mix(low, high, 0.5 + 0.5 * share));
  });
}

/** Spread of the heights about n between their 5th and 95th hundredth, the lane's own slope taken out. */
function spreadAt(heights: Float32Array, n: number): number {
  const reach = WINDOW / STEP;
  const near: number[] = [];
  let tilt = 0;
  let spread = 0;
  for (let d = -reach; d <= reach; d++) {
    const height = heights[n + d];
    if (height === undefined || Number.isNaN(height)) return Number.NaN;
    tilt += d * height;
    spread += d * d;
    near.push(height);
  }
  const level = near.map((height, m) => height - (tilt / spread) * (m - reach)).sort((a, b) => a - b);
  const at = (share: number) => level[Math.round(share * (level.length - 1))];
  return at(SPREAD.high) - at(SPREAD.low);
}

/**
 * Unevenness of the weld's surface along it: heights every 0.5 mm on 11 lanes over the middle 0.8 of the width; in each
 * lane the spread (5th to 95th hundredth) of the heights within 8 mm, their slope taken out; of the lanes the median, so
 * that a stop of one run among several does not count. Size = largest unevenness; start and end = longest stretch above
 * the threshold.
 */
export function measureUnevenness(face: Finished, search: AcrossSearch): Measured | null {
  const { grid } = face.strip;
  const every = Math.round(STEP * grid.perMm);
  const columns = columnsIn(face.strip, search.range).filter((i) => i % every === 0);
  if (columns.length === 0) return null;
  const spare = WINDOW / STEP;
  const x0 = columnX(grid, columns[0]) - WINDOW;
  const lanes = Array.from({ length: LANES.count }, (_, lane) =>
    laneHeights(face, x0, columns.length + 2 * spare, LANES.share * (-1 + (2 * lane) / (LANES.count - 1))),
  );
  const soundings = columns.map((i, n): Sounding => {
    const x = columnX(grid, i);
    const spreads = lanes.map((heights) => spreadAt(heights, n + spare)).sort((a, b) => a - b);
    const low = toeNear(face, -1, x, TOE_AVERAGED);
    const high = toeNear(face, 1, x, TOE_AVERAGED);
    const value = spreads.some(Number.isNaN) ? 0 : spreads[LANES.count >> 1];
    return { x, value, y: 0.5 * (low + high), low, high };
  });
  return gather(soundings, 1 / STEP, search.threshold, search.bridge);
}
