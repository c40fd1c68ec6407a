import { type Patch, PLATE_GRID, STRIP_GRID } from "@/lib/surface";
import type { FaceHeights } from "./protocol";

const NO_BYTES = new Uint8Array(0);
const NO_BRUSHING: Patch["brushing"] = { columns: 0, rows: 0, values: NO_BYTES };

/** Heights in the shape that gauges and sections read; they need no materials. */
export function withGrids(heights: FaceHeights): { strip: Patch; plate: Patch } {
  const bare = { albedo: NO_BYTES, finish: NO_BYTES, brushing: NO_BRUSHING };
  return {
    strip: { grid: STRIP_GRID, height: heights.strip, ...bare },
    plate: { grid: PLATE_GRID, height: heights.plate, ...bare },
  };
}
