import type { ImperfectionType } from "../../imperfections";
import { floatGrid, forEachPixel } from "../../surface";
import { type MaskExtent, measureMaskExtent, type Region } from "../measure";
import type { TruthItem } from "../truth";
import type { FaceWork } from "../work";
import { foundExtent, truthItem } from "./found";
import { plateAround } from "./plate-plane";

/** A place counts as cut away where it lies this far below the plate round the mark, mm; mere dressing is shallower. */
const CUT_FROM = { mark: 0.08, dressing: 0.06 };
/** Cuts up to this far apart belong to one mark, mm. */
const BRIDGE = 5;

/** What lies more than `from` mm below the plane of the plate round a box, and the largest such depth. */
function depression(work: FaceWork, box: Region, from: number): { extent: MaskExtent; depth: number } | null {
  const { grid, z, bead } = work.strip;
  const plate = plateAround(work.strip, box);
  const depths = floatGrid(grid.columns * grid.rows);
  let depth = 0;
  forEachPixel(grid, box, (k, x, y) => {
    if (bead[k] > 0.3) return;
    depths[k] = plate(x, y) - z[k];
    depth = Math.max(depth, depths[k]);
  });
  const extent = measureMaskExtent(grid, depths, from, box, BRIDGE);
  return extent && { extent, depth };
}

/**
 * A hollow in the plate within a box, whose frame must be undisturbed plate: depth of its deepest pixel below the plane
 * of the plate round the box (`plateAround`); extents of what lies more than 0.08 mm below it (0.06 for a harmless one),
 * parts up to 5 mm apart taken together. Null if nothing does.
 */
export function measuredDepression(
  work: FaceWork,
  id: string,
  type: ImperfectionType,
  box: Region,
  harmless = false,
): TruthItem | null {
  const found = depression(work, box, harmless ? CUT_FROM.dressing : CUT_FROM.mark);
  if (!found) return null;
  const { extent, depth } = found;
  return truthItem(work, id, type, { ...foundExtent(extent), size: depth, harmless });
}
