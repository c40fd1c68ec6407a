import { type Grid, sampleAt } from "../../surface";
import type { Finished, Heights, Side } from "./finished";
import { lineThrough } from "./plate-line";
import { toeNear } from "./toe";

/** From this far outside the toe to this far from the joint's centre a plate is felt, mm: beyond it lie its worn edges. */
const FROM_TOE = 5;
const TO = 66;
const STEP = 1;
const TOE_AVERAGED = 3;

/**
 * The angle at which the two plates meet at x, degrees, positive where they rise away from the weld: the difference of
 * the slopes of two straight lines fitted across the plates (`lineThrough`) from 5 mm outside either toe to 66 mm from
 * the joint's centre, on the strip and on the patches beside it. NaN where there is no weld.
 */
export function angleBetweenPlates(face: Finished, sides: readonly Heights[], x: number): number {
  const rise = (side: Side) => Math.atan(side * slopeOf(face, sides, side, x));
  return ((rise(1) + rise(-1)) * 180) / Math.PI;
}

function slopeOf(face: Finished, sides: readonly Heights[], side: Side, x: number): number {
  const from = Math.abs(toeNear(face, side, x, TOE_AVERAGED)) + FROM_TOE;
  if (Number.isNaN(from)) return Number.NaN;
  const patches = [face.strip, ...sides];
  const places: number[] = [];
  const heights: number[] = [];
  for (let out = from; out <= TO; out += STEP) {
    const y = side * out;
    const patch = patches.find(({ grid }) => holds(grid, y));
    if (!patch) continue;
    places.push(y);
    heights.push(sampleAt(patch.grid, patch.z, x, y));
  }
  return lineThrough(places, heights).slope;
}

/** True where y lies within the pixels' centres of a grid. */
const holds = ({ y0, rows, perMm }: Grid, y: number): boolean =>
  y >= y0 + 0.5 / perMm && y <= y0 + (rows - 0.5) / perMm;
