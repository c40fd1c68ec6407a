import { columnX, nearestColumn, rowOf, rowY } from "../../surface";
import type { Point } from "../truth";
import type { Heights, Measured, Range } from "./finished";
import { longestStretch } from "./stretch";

/** What one column of pixels shows: the largest value across and the span round it that exceeds the threshold. */
export interface Sounding {
  readonly x: number;
  readonly value: number;
  readonly y: number;
  /** Outer edges of the pixels of the span, mm; equal where nothing exceeds the threshold. */
  readonly low: number;
  readonly high: number;
}

/** Visits the columns whose centres lie in a range. */
export function columnsIn(field: Heights, range: Range): number[] {
  const first = nearestColumn(field.grid, range.from);
  const last = nearestColumn(field.grid, range.to);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, n) => first + n);
}

/**
 * Sounds one column between two y: `measureAt(height, y)` at every pixel's centre there. The span is the unbroken stretch
 * of pixels above the threshold round the largest one.
 */
export function soundColumn(
  field: Heights,
  i: number,
  low: number,
  high: number,
  threshold: number,
  measureAt: (z: number, y: number) => number,
): Sounding {
  const { grid, z } = field;
  const first = Math.max(0, Math.ceil(rowOf(grid, low)));
  const last = Math.min(grid.rows - 1, Math.floor(rowOf(grid, high)));
  const at = (j: number) => measureAt(z[j * grid.columns + i], rowY(grid, j));
  let best = first;
  let value = Number.NEGATIVE_INFINITY;
  for (let j = first; j <= last; j++) {
    const v = at(j);
    if (v > value) {
      value = v;
      best = j;
    }
  }
  const x = columnX(grid, i);
  const y = rowY(grid, best);
  if (!(value > threshold)) return { x, value, y, low: y, high: y };
  let a = best;
  let b = best;
  while (a > first && at(a - 1) > threshold) a--;
  while (b < last && at(b + 1) > threshold) b++;
  const half = 0.5 / grid.perMm;
  return { x, value, y, low: rowY(grid, a) - half, high: rowY(grid, b) + half };
}

/**
 * Makes one measured imperfection of neighbouring columns: the longest stretch above the threshold with gaps of at most
 * `bridge` mm, its largest value and width, and an outline round the spans. Null where no column exceeds the threshold.
 */
export function gather(
  soundings: readonly Sounding[],
  perMm: number,
  threshold: number,
  bridge: number,
): Measured | null {
  const stretch = longestStretch(
    soundings.map((s) => s.value > threshold),
    Math.round(bridge * perMm),
  );
  if (!stretch) return null;
  const within = soundings.slice(stretch.first, stretch.last + 1).filter((s) => s.value > threshold);
  const worst = within.reduce((a, b) => (b.value > a.value ? b : a));
  const half = 0.5 / perMm;
  return {
    start: within[0].x - half,
    end: within[within.length - 1].x + half,
    across: within.reduce((sum, s) => sum + s.y, 0) / within.length,
    size: worst.value,
    width: within.reduce((most, s) => Math.max(most, s.high - s.low), 0),
    worst: [worst.x, worst.y],
    outline: bandOutline(within, half),
  };
}

const OUTLINE_STEP = 0.5;
const OUTLINE_MARGIN = 0.15;

/**
 * Closed outline round spans across (low..high at x) that follow each other along x: about every 0.5 mm the widest of
 * the spans passed, with 0.15 mm to spare; `half` is half a column, mm.
 */
export function bandOutline(spans: readonly { x: number; low: number; high: number }[], half: number): Point[] {
  const below: Point[] = [];
  const above: Point[] = [];
  let n = 0;
  while (n < spans.length) {
    const from = spans[n].x;
    let low = spans[n].low;
    let high = spans[n].high;
    let to = from;
    while (n < spans.length && spans[n].x <= from + OUTLINE_STEP) {
      low = Math.min(low, spans[n].low);
      high = Math.max(high, spans[n].high);
      to = spans[n].x;
      n++;
    }
    const x = below.length === 0 ? from - half : n === spans.length ? to + half : (from + to) / 2;
    below.push([x, low - OUTLINE_MARGIN]);
    above.push([x, high + OUTLINE_MARGIN]);
    if (spans.length === n && below.length === 1) {
      below.push([to + half, low - OUTLINE_MARGIN]);
      above.push([to + half, high + OUTLINE_MARGIN]);
    }
  }
  return [...below, ...above.reverse()];
}
