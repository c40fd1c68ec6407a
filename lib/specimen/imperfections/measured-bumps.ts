import type { ImperfectionType } from "../../imperfections";
import { columnX, floatGrid, rowOf, rowY } from "../../surface";
import { measureMaskExtent, plateBeside, type Range, type Side } from "../measure";
import { toeAt } from "../runs/edit";
import type { TruthItem } from "../truth";
import type { FaceWork } from "../work";
import { FARTHEST } from "./beside-weld";
import { foundExtent, truthItem } from "./found";

/** How grains on the plate are looked for, mm. */
export interface BumpSearch {
  readonly side: Side;
  readonly range: Range;
  /** What stands this far above the plate belongs to a grain. */
  readonly rise: number;
  /** Grains up to this far apart belong together. */
  readonly bridge: number;
}

/** The plate is looked at from this far outside the toe, so that the weld's own flank does not count, mm. */
const CLEAR_OF_TOE = 0.6;

/**
 * The largest group of grains on the plate: places `rise` or more above the plate's line (`plateBeside`), at least 0.6 mm
 * outside the toe and up to 23 mm from the centreline, joined where at most `bridge` apart; the group with most area counts.
 * Width = extent across; no size.
 */
export function measuredBumps(
  work: FaceWork,
  id: string,
  type: ImperfectionType,
  { side, range, rise, bridge }: BumpSearch,
): TruthItem | null {
  const { grid, z } = work.strip;
  const bumps = floatGrid(grid.columns * grid.rows);
  const box = { x0: range.from, x1: range.to, y0: side < 0 ? -FARTHEST : 0, y1: side < 0 ? 0 : FARTHEST };
  for (let i = 0; i < grid.columns; i++) {
    const x = columnX(grid, i);
    if (x < box.x0 || x > box.x1) continue;
    const plate = plateBeside(work, side, x);
    const inner = toeAt(work, side, x, 0.6) + side * CLEAR_OF_TOE;
    const first = Math.max(0, Math.ceil(rowOf(grid, Math.min(inner, side * FARTHEST))));
    const last = Math.min(grid.rows - 1, Math.floor(rowOf(grid, Math.max(inner, side * FARTHEST))));
    for (let j = first; j <= last; j++) bumps[j * grid.columns + i] = z[j * grid.columns + i] - plate(rowY(grid, j));
  }
  const extent = measureMaskExtent(grid, bumps, rise, box, bridge);
  return extent && truthItem(work, id, type, foundExtent(extent));
}
