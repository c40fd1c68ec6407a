import { heightAt, type Surface } from "@/lib/surface";

/** Measuring by plain loops over the finished heights: shares no code with the product, only its definitions. */

/** Two who measure the same largest depth may differ by the first; by the second anywhere along it, where they see the same toes, mm. */
export const SIZE_TOLERANCE = 0.05;
const DEPTH_TOLERANCE = 0.02;
/** Width of a pixel of the strip, mm. */
export const PIXEL = 0.125;

export type Line = (y: number) => number;
export type Side = 1 | -1;

const sorted = (values: number[]) => values.slice().sort((a, b) => a - b);
export const median = (values: number[]) => sorted(values)[Math.floor(values.length / 2)];

/** Plate line by the median of all pairwise slopes (Theil 1950, Sen 1968), not by least squares as the product does. */
export function plate(surface: Surface, side: Side, x: number, toe: number): Line {
  const points: [number, number][] = [];
  for (let out = 3; out <= 9; out += 0.3)
    for (const dx of [-0.5, 0, 0.5]) points.push([toe + side * out, heightAt(surface, x + dx, toe + side * out)]);
  const slopes: number[] = [];
  for (let a = 0; a < points.length; a++)
    for (let b = a + 6; b < points.length; b += 2) {
      const run = points[b][0] - points[a][0];
      if (Math.abs(run) > 1.5) slopes.push((points[b][1] - points[a][1]) / run);
    }
  const slope = median(slopes);
  const level = median(points.map(([y, z]) => z - slope * y));
  return (y) => level + slope * y;
}

/** Outer toe at x: coming in from the plate, the first rise that stays 0.3 mm above the plate for half a millimetre. */
export function toeOf(surface: Surface, side: Side, x: number, from: number): number {
  const line = plate(surface, side, x, from);
  for (let y = from; y * side > 0; y -= side * 0.05) {
    let above = true;
    for (let in_ = 0; in_ <= 0.5; in_ += 0.1)
      if (heightAt(surface, x, y - side * in_) - line(y - side * in_) < 0.3) above = false;
    if (above) return y;
  }
  return side * 2;
}

export interface Column {
  readonly x: number;
  readonly value: number;
  readonly y: number;
}

/** Columns of pixels that a stretch of x covers. */
export function columns(from: number, to: number, at: (x: number) => { value: number; y: number }): Column[] {
  const list: Column[] = [];
  for (let i = Math.floor(from / PIXEL); (i + 0.5) * PIXEL < to; i++) {
    const x = (i + 0.5) * PIXEL;
    list.push({ x, ...at(x) });
  }
  return list;
}

/** Largest of f over y, in steps of a twentieth of a millimetre. */
export function largest(low: number, high: number, f: (y: number) => number): { value: number; y: number } {
  let best = { value: -99, y: low };
  for (let y = low; y <= high; y += 0.05) {
    const value = f(y);
    if (value > best.value) best = { value, y };
  }
  return best;
}

/** Longest part of the list above a threshold, gaps up to `bridge` mm allowed. */
export function longest(list: readonly Column[], threshold: number, bridge: number, tolerance = DEPTH_TOLERANCE) {
  const part = longestPart(list, threshold, bridge);
  return {
    ...endsOf(part),
    size: Math.max(...part.map((c) => c.value)),
    across: part.reduce((sum, c) => sum + c.y, 0) / part.length,
    /** Ends where as much less, and as much more, counts as two measurers may differ by: between them either may be right. */
    least: endsOf(longestPart(list, threshold + tolerance, bridge)),
    most: endsOf(longestPart(list, threshold - tolerance, bridge)),
  };
}

const endsOf = (part: readonly Column[]) => ({
  start: part[0].x - PIXEL / 2,
  end: part[part.length - 1].x + PIXEL / 2,
});

function longestPart(list: readonly Column[], threshold: number, bridge: number): Column[] {
  const parts: Column[][] = [];
  for (const column of list) {
    if (column.value <= threshold) continue;
    const last = parts[parts.length - 1];
    if (last && column.x - last[last.length - 1].x <= bridge + 1.01 * PIXEL) last.push(column);
    else parts.push([column]);
  }
  const length = (part: Column[]) => part[part.length - 1].x - part[0].x;
  return parts.reduce((a, b) => (length(b) > length(a) ? b : a));
}
