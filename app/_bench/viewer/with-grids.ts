import { gridsOf, type Patch } from "@/lib/surface";
import type { Aspect } from "@/lib/weld";
import type { FaceHeights } from "./protocol";

const NO_BYTES = new Uint8Array(0);
const NO_BRUSHING: Patch["brushing"] = { columns: 0, rows: 0, values: NO_BYTES };

/** Heights in the shape that gauges and sections read; they need no materials. */
export function withGrids(
  aspect: Aspect,
  heights: Pick<FaceHeights, "strip" | "plate">,
): { strip: Patch; plate: Patch } {
  const grids = gridsOf(aspect);
  const bare = { albedo: NO_BYTES, finish: NO_BYTES, brushing: NO_BRUSHING };
  return {
    strip: { grid: grids.strip, height: heights.strip, ...bare },
    plate: { grid: grids.plate, height: heights.plate, ...bare },
  };
}
