import { columnX, nearestRow, rowY } from "../../surface";
import { bandOutline, longestStretch, type Range, type Side } from "../measure";
import { toeAt } from "../runs/edit";
import type { TruthItem } from "../truth";
import type { FaceWork } from "../work";
import { truthItem } from "./found";

/** Where the plate beside the weld is looked at, mm outside the toe. */
const LOOKED_AT: Range = { from: 0.8, to: 13 };
/** A column's colour is the mean over this far to both sides along the weld, mm. */
const EVENED = 2;
/** Colour beyond the usual of this weld from which a stretch counts as discoloured, and a pixel as part of a band. */
export const COLOURED_FROM = 0.12;
const PIXEL_FROM = 0.3;
/** Paler stretches up to this length do not end it, mm. */
const BRIDGE = 6;

/**
 * How far a pixel's colour lies from grey: length of the logarithms of red and blue against green, in linear light. The
 * brightness of the light does not change it.
 */
export function colourfulness({ strip }: Pick<FaceWork, "strip">, k: number): number {
  const green = Math.log(strip.green[k] + 0.004);
  const red = Math.log(strip.red[k] + 0.004) - green;
  const blue = Math.log(strip.blue[k] + 0.004) - green;
  return Math.hypot(red, blue);
}

interface Column {
  readonly x: number;
  readonly colour: number;
  readonly low: number;
  readonly high: number;
  readonly strongest: { readonly colour: number; readonly y: number };
}

function lookAt(work: FaceWork, side: Side, i: number): Column {
  const { grid } = work.strip;
  const x = columnX(grid, i);
  const toe = toeAt(work, side, x, 1);
  const inner = nearestRow(grid, toe + side * LOOKED_AT.from);
  const outer = nearestRow(grid, toe + side * LOOKED_AT.to);
  let sum = 0;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  let strongest = { colour: -1, y: toe };
  for (let j = inner; j !== outer; j += side) {
    const y = rowY(grid, j);
    const colour = colourfulness(work, j * grid.columns + i);
    sum += colour;
    if (colour > strongest.colour) strongest = { colour, y };
    if (colour < PIXEL_FROM) continue;
    low = Math.min(low, y);
    high = Math.max(high, y);
  }
  return { x, colour: sum / Math.abs(outer - inner), low, high, strongest };
}

const median = (values: readonly number[]): number => values.slice().sort((a, b) => a - b)[values.length >> 1];

/**
 * Stretch of plate beside a toe whose colour is much stronger than along the rest of the weld on that side. A column's colour
 * is the mean `colourfulness` from 0.8 to 13 mm outside the toe, evened out over +-2 mm; it counts where it exceeds the median
 * of the whole weld by 0.12 or more. Across and width from the pixels whose colour exceeds 0.3. Null if nothing counts.
 */
export function measuredColour(work: FaceWork, id: string, side: Side, range: Range): TruthItem | null {
  const { grid } = work.strip;
  const columns = Array.from({ length: grid.columns }, (_, i) => lookAt(work, side, i));
  const usual = median(columns.map(({ colour }) => colour));
  const reach = Math.round(EVENED * grid.perMm);
  const evened = columns.map((_, i) => {
    const near = columns.slice(Math.max(0, i - reach), i + reach + 1);
    return near.reduce((sum, { colour }) => sum + colour, 0) / near.length;
  });
  const stretch = longestStretch(
    columns.map(({ x }, i) => x > range.from && x < range.to && evened[i] - usual > COLOURED_FROM),
    Math.round(BRIDGE * grid.perMm),
  );
  if (!stretch) return null;
  const within = columns.slice(stretch.first, stretch.last + 1).filter(({ high }) => Number.isFinite(high));
  if (within.length === 0) return null;
  const worst = within.reduce((a, b) => (b.strongest.colour > a.strongest.colour ? b : a));
  const half = 0.5 / grid.perMm;
  const low = within.reduce((least, column) => Math.min(least, column.low), Number.POSITIVE_INFINITY) - half;
  const high = within.reduce((most, column) => Math.max(most, column.high), Number.NEGATIVE_INFINITY) + half;
  return truthItem(work, id, "temper-colour", {
    start: columns[stretch.first].x - half,
    end: columns[stretch.last].x + half,
    across: (low + high) / 2,
    size: null,
    width: high - low,
    worst: [worst.x, worst.strongest.y],
    outline: bandOutline(within, half),
  });
}
