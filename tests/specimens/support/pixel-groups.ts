import { PIXEL } from "./plain-loops";

/** Grouping pixels by plain loops: shares no code with the product, only its definitions. */

/** The middle of a pixel, mm. */
export interface Place {
  readonly x: number;
  readonly y: number;
}

export interface Extent {
  readonly start: number;
  readonly end: number;
  readonly low: number;
  readonly high: number;
  readonly across: number;
}

/** Groups of pixels whose middles lie at most `bridge` mm apart, the largest first (breadth-first search over all pairs). */
export function groups<P extends Place>(list: readonly P[], bridge: number): P[][] {
  const rest = new Set(list);
  const found: P[][] = [];
  for (const seed of list) {
    if (!rest.delete(seed)) continue;
    const group = [seed];
    for (let n = 0; n < group.length; n++)
      for (const other of rest) {
        if (Math.abs(other.x - group[n].x) > bridge + 1e-6) continue;
        if (Math.hypot(other.x - group[n].x, other.y - group[n].y) > bridge + 1e-6) continue;
        rest.delete(other);
        group.push(other);
      }
    found.push(group);
  }
  return found.sort((a, b) => b.length - a.length);
}

/** Outer edges of the pixels along and across, and the middle across. */
export function extent(list: readonly Place[]): Extent {
  const edges = (values: number[]) => [Math.min(...values) - PIXEL / 2, Math.max(...values) + PIXEL / 2] as const;
  const [start, end] = edges(list.map(({ x }) => x));
  const [low, high] = edges(list.map(({ y }) => y));
  return { start, end, low, high, across: (low + high) / 2 };
}
