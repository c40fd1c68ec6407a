import { forEachPixel, type Grid } from "../../surface";
import type { Point } from "../truth";
import { bandOutline } from "./sounding";

/** A box on a face, mm. */
export interface Region {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
}

/** Extent of a connected patch of a mask, mm. */
export interface MaskExtent {
  /** Outer edges of its pixels, along and across. */
  readonly start: number;
  readonly end: number;
  readonly low: number;
  readonly high: number;
  /** Mean y of its pixels. */
  readonly across: number;
  /** Largest span across in one column, gaps included. */
  readonly width: number;
  /** mm2 */
  readonly area: number;
  /** Pixel where the mask is largest (the first of equals). */
  readonly strongest: Point;
  readonly outline: readonly Point[];
}

interface Spot {
  readonly k: number;
  readonly x: number;
  readonly y: number;
  taken: boolean;
}

/**
 * Extent of the slag or of the crack in a mask plane: the pixels in the region whose mask exceeds the threshold are
 * joined where their centres are at most `bridge` mm apart; the patch that covers most pixels counts. Null if no pixel
 * exceeds the threshold.
 */
export function measureMaskExtent(
  grid: Grid,
  mask: Float32Array,
  threshold: number,
  region: Region,
  bridge = 1,
): MaskExtent | null {
  const spots: Spot[] = [];
  forEachPixel(grid, region, (k, x, y) => {
    if (mask[k] > threshold) spots.push({ k, x, y, taken: false });
  });
  const patch = largestPatch(spots, bridge);
  return patch.length === 0 ? null : extentOf(grid, mask, patch);
}

/** Splits spots into patches of neighbours at most `bridge` apart and returns the one with most spots. */
function largestPatch(spots: readonly Spot[], bridge: number): Spot[] {
  const cells = new Map<string, Spot[]>();
  const cellOf = (x: number, y: number) => [Math.floor(x / bridge), Math.floor(y / bridge)] as const;
  for (const spot of spots) {
    const key = cellOf(spot.x, spot.y).join();
    const cell = cells.get(key);
    if (cell) cell.push(spot);
    else cells.set(key, [spot]);
  }
  let largest: Spot[] = [];
  for (const seed of spots) {
    if (seed.taken) continue;
    seed.taken = true;
    const patch = [seed];
    for (let n = 0; n < patch.length; n++) {
      const { x, y } = patch[n];
      const [cx, cy] = cellOf(x, y);
      for (let dx = -1; dx <= 1; dx++)
        for (let dy = -1; dy <= 1; dy++)
          for (const other of cells.get(`${cx + dx},${cy + dy}`) ?? []) {
            if (other.taken || Math.hypot(other.x - x, other.y - y) > bridge + 1e-9) continue;
            other.taken = true;
            patch.push(other);
          }
    }
    if (patch.length > largest.length) largest = patch;
  }
  return largest;
}

function extentOf(grid: Grid, mask: Float32Array, patch: readonly Spot[]): MaskExtent {
  const half = 0.5 / grid.perMm;
  const columns = spansBy(
    patch,
    (s) => s.x,
    (s) => s.y,
    half,
  );
  const rows = spansBy(
    patch,
    (s) => s.y,
    (s) => s.x,
    half,
  );
  const strongest = patch.reduce((a, b) => (mask[b.k] > mask[a.k] ? b : a));
  const isTall = rows.length > columns.length;
  const outline = isTall ? bandOutline(rows, half).map(([y, x]): Point => [x, y]) : bandOutline(columns, half);
  return {
    start: columns[0].x - half,
    end: columns[columns.length - 1].x + half,
    low: rows[0].x - half,
    high: rows[rows.length - 1].x + half,
    across: patch.reduce((sum, s) => sum + s.y, 0) / patch.length,
    width: columns.reduce((most, c) => Math.max(most, c.high - c.low), 0),
    area: patch.length / grid.perMm ** 2,
    strongest: [strongest.x, strongest.y],
    outline,
  };
}

/** Outer span of `other` for every value of `along`, in ascending order. */
function spansBy(
  patch: readonly Spot[],
  along: (spot: Spot) => number,
  other: (spot: Spot) => number,
  half: number,
): { x: number; low: number; high: number }[] {
  const spans = new Map<number, { x: number; low: number; high: number }>();
  for (const spot of patch) {
    const x = along(spot);
    const value = other(spot);
    const span = spans.get(x);
    if (!span) spans.set(x, { x, low: value - half, high: value + half });
    else {
      span.low = Math.min(span.low, value - half);
      span.high = Math.max(span.high, value + half);
    }
  }
  return [...spans.values()].sort((a, b) => a.x - b.x);
}
