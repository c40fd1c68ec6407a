import type { ImperfectionType } from "../../imperfections";
import { type MeasuredHole, measureHole } from "../measure";
import type { TruthItem } from "../truth";
import type { FaceWork } from "../work";
import { boxOutline, circleOutline, truthItem } from "./found";
import type { GasHole } from "./gas-hole";

const MARGIN = 0.3;
/** Where to look for a hole, and of about what size, mm. */
type HolePlace = Pick<GasHole, "x" | "y" | "radius">;

/** A hole counts from this depth on, mm. */
const SHALLOWEST = 0.1;

function measureOne(work: FaceWork, hole: HolePlace): MeasuredHole | null {
  const found = measureHole(work.strip, hole.x, hole.y, hole.radius);
  return found && found.depth >= SHALLOWEST ? found : null;
}

/**
 * One hole on the finished surface, by `measureHole` (mouth = what lies deeper than 35 % of the depth below the metal
 * round it; diameter of the circle of equal area). Size and width = that diameter; null if it is shallower than 0.1 mm.
 */
export function measuredHole(
  work: FaceWork,
  id: string,
  type: ImperfectionType,
  hole: HolePlace,
  harmless = false,
): TruthItem | null {
  const found = measureOne(work, hole);
  if (!found) return null;
  const [x, y] = found.middle;
  return truthItem(work, id, type, {
    start: found.start,
    end: found.end,
    across: y,
    size: found.diameter,
    width: found.diameter,
    worst: found.deepest,
    outline: circleOutline(x, y, found.diameter / 2 + MARGIN),
    harmless,
  });
}

/** A group of holes: size = largest mouth, extents from the outermost mouth edges, holes shallower than 0.1 mm left out. */
export function measuredHoles(
  work: FaceWork,
  id: string,
  type: ImperfectionType,
  holes: readonly HolePlace[],
): TruthItem | null {
  const found = holes.map((hole) => measureOne(work, hole)).filter((hole) => hole !== null);
  if (found.length === 0) return null;
  const largest = found.reduce((a, b) => (b.diameter > a.diameter ? b : a));
  const box = {
    x0: Math.min(...found.map((hole) => hole.start)),
    x1: Math.max(...found.map((hole) => hole.end)),
    y0: Math.min(...found.map((hole) => hole.low)),
    y1: Math.max(...found.map((hole) => hole.high)),
  };
  return truthItem(work, id, type, {
    start: box.x0,
    end: box.x1,
    across: (box.y0 + box.y1) / 2,
    size: largest.diameter,
    width: box.y1 - box.y0,
    worst: largest.middle,
    outline: boxOutline(box),
  });
}
