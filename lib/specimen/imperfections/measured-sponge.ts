import { measureHole } from "../measure";
import type { TruthItem } from "../truth";
import type { FaceWork } from "../work";
import { boxOutline, truthItem } from "./found";

/** A cell counts from this depth below the metal round it on, mm. */
const CELL_FROM = 0.15;

/**
 * A spongy stretch: from the first to the last cell that `measureHole` finds 0.15 mm or more deep, mouth edges included;
 * across and width likewise; worst = the deepest cell.
 */
export function measuredSponge(
  work: FaceWork,
  id: string,
  cells: readonly { readonly x: number; readonly y: number; readonly radius: number }[],
): TruthItem | null {
  const found = cells
    .map((cell) => measureHole(work.strip, cell.x, cell.y, cell.radius))
    .filter((hole) => hole !== null && hole.depth >= CELL_FROM)
    .map((hole) => hole!);
  if (found.length === 0) return null;
  const deepest = found.reduce((a, b) => (b.depth > a.depth ? b : a));
  const box = {
    x0: Math.min(...found.map((hole) => hole.start)),
    x1: Math.max(...found.map((hole) => hole.end)),
    y0: Math.min(...found.map((hole) => hole.low)),
    y1: Math.max(...found.map((hole) => hole.high)),
  };
  return truthItem(work, id, "root-porosity", {
    start: box.x0,
    end: box.x1,
    across: (box.y0 + box.y1) / 2,
    size: null,
    width: box.y1 - box.y0,
    worst: deepest.deepest,
    outline: boxOutline(box),
  });
}
