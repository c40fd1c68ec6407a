import { toeAt } from "../runs/edit";
import type { FaceWork, FeatureRequest } from "../work";

/** Marks on the plate stay in the finely sampled strip: their far edge at most this far from the centreline, mm. */
export const FARTHEST = 23;

/**
 * Middle, mm across, of a mark on the plate that reaches `half` mm to either side: as asked, but at least `clear` mm
 * outside the toe and no farther out than 23 mm.
 */
export function besideWeld(work: FaceWork, request: FeatureRequest, x: number, half: number, clear: number): number {
  const side = request.y === undefined ? request.side : request.y < 0 ? -1 : 1;
  const toe = Math.abs(toeAt(work, side, x, 3));
  const nearest = toe + half + clear;
  const wanted = request.y === undefined ? nearest + 2.5 : Math.abs(request.y);
  return side * Math.min(Math.max(wanted, nearest), FARTHEST - half);
}
