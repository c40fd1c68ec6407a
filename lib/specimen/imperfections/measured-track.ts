import type { ImperfectionType } from "../../imperfections";
import { clamp } from "../../math";
import { floatGrid, sampleAt } from "../../surface";
import { measureMaskExtent } from "../measure";
import type { TruthItem } from "../truth";
import type { FaceWork } from "../work";
import { boxAround } from "./crack-opening";
import { foundExtent, truthItem } from "./found";
import type { GasTrack } from "./gas-track";
import { pixelsNear } from "./near-line";

/** A track counts as far as it lies this far below the metal beside it, mm. */
const OPEN_FROM = 0.12;
/** The metal beside it is felt at so many half widths and a little more from its middle line, mm. */
const BESIDE = { halfWidths: 1.5, more: 0.3 };
const REACH = 1.4;
/** A round bead bulges up between those places, mm at most. */
const MOST_BULGE = 0.3;

/**
 * Open parts of gas tracks: the pixels within 1.4 half widths of their lines that lie more than 0.12 mm below the
 * arch over the track that the metal on both sides suggests (parabola through its mean at 1.5 half widths + 0.3 mm and at
 * twice that from the middle), parts up to `bridge` mm apart taken together. Start, end, across and width = outer edges of those pixels; no size.
 */
export function measuredTracks(
  work: FaceWork,
  id: string,
  type: ImperfectionType,
  tracks: readonly GasTrack[],
  bridge: number,
): TruthItem | null {
  if (tracks.length === 0) return null;
  const { grid, z } = work.strip;
  const depths = floatGrid(grid.columns * grid.rows);
  for (const { points, widest } of tracks) {
    const beside = BESIDE.halfWidths * widest + BESIDE.more;
    for (const { k, distance, foot, way } of pixelsNear(work.strip, points, REACH * widest).near) {
      const metal = (reach: number) =>
        0.5 * sampleAt(grid, z, foot[0] - way[1] * reach, foot[1] + way[0] * reach) +
        0.5 * sampleAt(grid, z, foot[0] + way[1] * reach, foot[1] - way[0] * reach);
      const near = metal(beside);
      const bulge = clamp((near - metal(2 * beside)) / 3, 0, MOST_BULGE);
      const level = near + bulge * (1 - (distance / beside) ** 2);
      depths[k] = Math.max(depths[k], level - z[k]);
    }
  }
  const widest = Math.max(...tracks.map((track) => track.widest));
  const box = boxAround(
    tracks.map(({ points }) => points),
    REACH * widest,
  );
  const extent = measureMaskExtent(grid, depths, OPEN_FROM, box, bridge);
  return extent && truthItem(work, id, type, foundExtent(extent));
}
