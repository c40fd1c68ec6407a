import type { ImperfectionType } from "../../imperfections";
import { floatGrid, forEachPixel } from "../../surface";
import { measureMaskExtent, plateChord } from "../measure";
import type { TruthItem } from "../truth";
import type { FaceWork } from "../work";
import { foundPlace, truthItem } from "./found";

/** A burnt place counts as far as it lies this much below the plates, mm. */
const BELOW_PLATE = 0.6;
const PLATE_AT = 6;

/**
 * What lies 0.6 mm or more below the straight line between the two plates (through y = -6 and +6 mm, at the middle of the
 * place) within `reach` mm of (x, y): middle of the largest connected patch; width = the larger of its extents along and
 * across; worst = its deepest pixel.
 */
export function measuredPit(
  work: FaceWork,
  id: string,
  type: ImperfectionType,
  place: { x: number; y: number; reach: number },
): TruthItem | null {
  const { grid, z } = work.strip;
  const chord = plateChord(work, place.x, -PLATE_AT, PLATE_AT);
  const box = {
    x0: place.x - place.reach,
    x1: place.x + place.reach,
    y0: place.y - place.reach,
    y1: place.y + place.reach,
  };
  const depth = floatGrid(grid.columns * grid.rows);
  forEachPixel(grid, box, (k, _x, y) => {
    depth[k] = chord(y) - z[k];
  });
  const extent = measureMaskExtent(grid, depth, BELOW_PLATE, box, 0.3);
  return extent && truthItem(work, id, type, foundPlace(extent));
}
