import type { AskedWindow } from "../eye";
import { WINDOW_MARGIN } from "../eye";
import type { Mm } from "../math";
import type { Point } from "../specimen";
import { STRIP_GRID, TILE_PIXELS, type TileCut } from "../surface";
import type { Face } from "../weld";

/** A window on a face of a piece; places on the piece in mm, as everywhere. */
export interface PlacedWindow extends AskedWindow {
  readonly specimenId: string;
  readonly face: Face;
  /** Its edge towards the datum. */
  readonly left: Mm;
  /** Its middle across. */
  readonly middle: Mm;
  /** Looked at with the plate turned end for end. */
  readonly isTurned: boolean;
}

/** A stretch of a face, mm. */
export interface Box {
  readonly x0: Mm;
  readonly x1: Mm;
  readonly y0: Mm;
  readonly y1: Mm;
}

/** Windows lie on this raster, so that they can be cut out of the surface, mm. */
export const RASTER: Mm = TILE_PIXELS / STRIP_GRID.perMm;

/** What windows can be cut from: the fine strip of a plate. */
export const STRIP: Box = {
  x0: STRIP_GRID.x0,
  x1: STRIP_GRID.x0 + STRIP_GRID.columns / STRIP_GRID.perMm,
  y0: STRIP_GRID.y0,
  y1: STRIP_GRID.y0 + STRIP_GRID.rows / STRIP_GRID.perMm,
};

export const boxOf = ({ left, middle, length, width }: PlacedWindow): Box => ({
  x0: left,
  x1: left + length,
  y0: middle - width / 2,
  y1: middle + width / 2,
});

/** A place of the piece in the window's own frame. */
export function intoWindow({ left, middle, length, isTurned }: PlacedWindow, [x, y]: Point): Point {
  return isTurned ? [left + length - x, middle - y] : [x - left, y - middle];
}

/** What of the strip is sent for a window: the window with its margin. */
export function cutOf({ left, middle, length, width, isTurned }: PlacedWindow): TileCut {
  const pixels = (mm: Mm) => Math.round(mm * STRIP_GRID.perMm);
  return {
    column: pixels(left - WINDOW_MARGIN - STRIP.x0),
    row: pixels(middle - width / 2 - WINDOW_MARGIN - STRIP.y0),
    columns: pixels(length + 2 * WINDOW_MARGIN),
    rows: pixels(width + 2 * WINDOW_MARGIN),
    isTurned,
  };
}
