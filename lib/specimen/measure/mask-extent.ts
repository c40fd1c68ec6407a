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
    if (mask[k] > threshold) spots.push({ k, x, y });
  });
  const patch = largestPatch(spots, bridge);
  return patch.length === 0 ? null : extentOf(grid, mask, patch);
}

/** Spots so near to each other that they belong together whatever lies round them. */
interface Cell {
  readonly u: number;
  readonly v: number;
  readonly spots: Spot[];
  patch: number;
}

/** Splits spots into patches of neighbours at most `bridge` apart and returns the one with most spots, in their order. */
function largestPatch(spots: readonly Spot[], bridge: number): Spot[] {
  const { cells, cellOf } = sortIntoCells(spots, bridge / Math.SQRT2);
  const sizes: number[] = [];
  for (const first of cells.values()) {
    if (first.patch >= 0) continue;
    const patch = sizes.length;
    first.patch = patch;
    const found = [first];
    let size = 0;
    for (let n = 0; n < found.length; n++) {
      size += found[n].spots.length;
      for (let du = -2; du <= 2; du++)
        for (let dv = -2; dv <= 2; dv++) {
          const other = cells.get(keyOf(found[n].u + du, found[n].v + dv));
          if (!other || other.patch >= 0 || !areNear(found[n], other, bridge)) continue;
          other.patch = patch;
          found.push(other);
        }
    }
    sizes.push(size);
  }
  if (sizes.length === 0) return [];
  const largest = sizes.indexOf(Math.max(...sizes));
  return spots.filter((spot) => cellOf(spot).patch === largest);
}

/** Cells on a face have numbers well within +-5000. */
const keyOf = (u: number, v: number): number => (u + 5000) * 10000 + v + 5000;

function sortIntoCells(spots: readonly Spot[], side: number): { cells: Map<number, Cell>; cellOf: (s: Spot) => Cell } {
  const cells = new Map<number, Cell>();
  const cellOf = ({ x, y }: Spot): Cell => {
    const u = Math.floor(x / side);
    const v = Math.floor(y / side);
    const key = keyOf(u, v);
    const known = cells.get(key);
    if (known) return known;
    const made: Cell = { u, v, spots: [], patch: -1 };
    cells.set(key, made);
    return made;
  };
  for (const spot of spots) cellOf(spot).spots.push(spot);
  return { cells, cellOf };
}

/** True where a spot of one cell lies at most `bridge` from one of the other. */
function areNear(a: Cell, b: Cell, bridge: number): boolean {
  const furthest = (bridge + 1e-9) ** 2;
  for (let n = 0; n < a.spots.length; n++) {
    const { x, y } = a.spots[n];
    for (let m = 0; m < b.spots.length; m++) {
      const dx = b.spots[m].x - x;
      const dy = b.spots[m].y - y;
      if (dx * dx + dy * dy <= furthest) return true;
    }
  }
  return false;
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
