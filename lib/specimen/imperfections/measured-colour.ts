import { hypot, median } from "../../math";
import { columnX, nearestRow, rowY } from "../../surface";
import type { Range, Side } from "../measure";
import { toeAt } from "../runs/edit";
import type { TruthItem } from "../truth";
import type { FaceWork } from "../work";
import { measuredColumns, type SeenColumn } from "./measured-columns";

/** Where the plate beside the weld is looked at, mm outside the toe. */
const LOOKED_AT: Range = { from: 0.8, to: 13 };
/** A column's colour is the mean over this far to both sides along the weld, mm. */
const EVENED = 2;
/** Colour beyond the usual of this weld from which a stretch counts as discoloured, and a pixel as part of a band. */
const COLOURED_FROM = 0.12;
const PIXEL_FROM = 0.3;
/** Paler stretches up to this length do not end it, mm. */
const BRIDGE = 6;

/**
 * How far a pixel's colour lies from grey: length of the logarithms of red and blue against green, in linear light. The
 * brightness of the light does not change it.
 */
function colourfulness({ strip }: Pick<FaceWork, "strip">, k: number): number {
  const green = Math.log(strip.green[k] + 0.004);
  const red = Math.log(strip.red[k] + 0.004) - green;
  const blue = Math.log(strip.blue[k] + 0.004) - green;
  return hypot(red, blue);
}

function lookAt(work: FaceWork, side: Side, i: number): SeenColumn {
  const { grid } = work.strip;
  const x = columnX(grid, i);
  const toe = toeAt(work, side, x, 1);
  const inner = nearestRow(grid, toe + side * LOOKED_AT.from);
  const outer = nearestRow(grid, toe + side * LOOKED_AT.to);
  let sum = 0;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  let strongest = { value: -1, y: toe };
  for (let j = inner; j !== outer; j += side) {
    const y = rowY(grid, j);
    const colour = colourfulness(work, j * grid.columns + i);
    sum += colour;
    if (colour > strongest.value) strongest = { value: colour, y };
    if (colour < PIXEL_FROM) continue;
    low = Math.min(low, y);
    high = Math.max(high, y);
  }
  return { x, value: sum / Math.abs(outer - inner), low, high, strongest };
}

/**
 * Stretch of plate beside a toe whose colour is much stronger than along the rest of the weld on that side. A column's colour
 * is the mean `colourfulness` from 0.8 to 13 mm outside the toe, evened out over +-2 mm; it counts where it exceeds the median
 * of the whole weld by 0.12 or more. Across and width from the pixels whose colour exceeds 0.3. Null if nothing counts.
 */
export function measuredColour(work: FaceWork, id: string, side: Side, range: Range): TruthItem | null {
  const { grid } = work.strip;
  const columns = Array.from({ length: grid.columns }, (_, i) => lookAt(work, side, i));
  const usual = median(columns.map(({ value }) => value));
  return measuredColumns(work, id, "temper-colour", columns, {
    range,
    evened: EVENED,
    threshold: usual + COLOURED_FROM,
    bridge: BRIDGE,
  });
}
