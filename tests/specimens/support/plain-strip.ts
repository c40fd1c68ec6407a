import type { FaceWork } from "@/lib/specimen/work";
import { median, PIXEL } from "./plain-loops";

/** Plain loops over the pixels of a strip that is not finished yet: nothing shared with lib. */

export const columnAt = (work: FaceWork, x: number): number => Math.floor((x - work.strip.grid.x0) / PIXEL);
export const xOf = (work: FaceWork, i: number): number => work.strip.grid.x0 + (i + 0.5) * PIXEL;
export const yOf = (work: FaceWork, j: number): number => work.strip.grid.y0 + (j + 0.5) * PIXEL;

/** Height at a place, straight-line between the four pixels round it. */
export function heightOf(work: FaceWork, x: number, y: number): number {
  const { grid, z } = work.strip;
  const u = (x - grid.x0) / PIXEL - 0.5;
  const v = (y - grid.y0) / PIXEL - 0.5;
  const i = Math.floor(u);
  const j = Math.floor(v);
  const at = (di: number, dj: number) => z[(j + dj) * grid.columns + i + di];
  const low = at(0, 0) + (u - i) * (at(1, 0) - at(0, 0));
  const high = at(0, 1) + (u - i) * (at(1, 1) - at(0, 1));
  return low + (v - j) * (high - low);
}

/** Plate beside the weld, 3 to 9 mm outside y: line through the medians of its inner and outer half. */
export function plateOutside(work: FaceWork, side: 1 | -1, x: number, y: number): (at: number) => number {
  const half = (from: number) => {
    const heights: number[] = [];
    for (let out = from; out < from + 3; out += 0.15)
      for (const dx of [-0.5, 0, 0.5]) heights.push(heightOf(work, x + dx, y + side * out));
    return median(heights);
  };
  const inner = half(3);
  const outer = half(6);
  return (at) => inner + ((outer - inner) * (side * (at - y) - 4.5)) / 3;
}

export interface Stretch {
  readonly start: number;
  readonly end: number;
  readonly size: number;
}

/** The longest stretch of values above a threshold; holes of at most `bridge` mm are passed over. */
export function longestAbove(
  values: readonly { x: number; value: number }[],
  threshold: number,
  bridge: number,
  step = PIXEL,
): Stretch {
  let best: Stretch = { start: 0, end: 0, size: 0 };
  let open: Stretch | null = null;
  for (const { x, value } of values) {
    if (!(value > threshold)) continue;
    const goes: boolean = open !== null && x - open.end <= bridge + 1.5 * step;
    const here: Stretch =
      open && goes
        ? { start: open.start, end: x, size: Math.max(open.size, value) }
        : { start: x, end: x, size: value };
    open = here;
    if (here.end - here.start >= best.end - best.start) best = here;
  }
  return { start: best.start - step / 2, end: best.end + step / 2, size: best.size };
}
