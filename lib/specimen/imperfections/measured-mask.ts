import { type ImperfectionType, imperfection } from "../../imperfections";
import { measureMaskExtent, type Region } from "../measure";
import type { Point, TruthItem } from "../truth";
import type { FaceWork } from "../work";
import { boxAround } from "./crack-opening";
import { foundExtent, foundPlace, truthItem } from "./found";

/** Share of a pixel from which the opening of a crack, or slag, is to be seen. */
const CRACK_VISIBLE = 0.25;
const SLAG_VISIBLE = 0.5;
/** Pieces of one crack, or of one strip of slag, lie at most this far apart, mm. */
const CRACK_BRIDGE = 2.5;
const SLAG_BRIDGE = 1.5;
const MARGIN = 0.5;

/**
 * Visible extent of a crack: the pixels near its lines of which the opening covers more than a quarter, pieces up to
 * `bridge` mm apart (2.5 unless said) taken together. Across = middle of the extent across; width = that extent, or for
 * a point the larger of both extents.
 */
export function measuredCrack(
  work: FaceWork,
  id: string,
  type: ImperfectionType,
  lines: readonly (readonly Point[])[],
  bridge = CRACK_BRIDGE,
): TruthItem | null {
  const { grid, crack } = work.strip;
  const extent = measureMaskExtent(grid, crack, CRACK_VISIBLE, boxAround(lines, MARGIN), bridge);
  const found = imperfection(type).extent === "point" ? foundPlace : foundExtent;
  return extent && truthItem(work, id, type, found(extent));
}

/** Visible extent of slag in a region: pixels of which slag covers more than half. Width = the widest column. */
export function measuredSlag(work: FaceWork, id: string, region: Region): TruthItem | null {
  const { grid, slag } = work.strip;
  const extent = measureMaskExtent(grid, slag, SLAG_VISIBLE, region, SLAG_BRIDGE);
  return extent && truthItem(work, id, "slag-residue", { ...foundExtent(extent), width: extent.width });
}
