import { type Grid, occlusionOf } from "@/lib/surface";
import { toHalf } from "./half-float";

/** Packs height, slopes and share of open sky of a height field as half floats, four to a pixel. */
export function packRelief(height: Float32Array, grid: Grid): Uint16Array {
  const { columns, rows, perMm } = grid;
  const open = occlusionOf({ grid, height });
  const relief = new Uint16Array(4 * columns * rows);
  for (let j = 0; j < rows; j++) {
    const above = j > 0 ? columns : 0;
    const below = j < rows - 1 ? columns : 0;
    const acrossScale = perMm / (above && below ? 2 : 1);
    for (let i = 0, k = j * columns; i < columns; i++, k++) {
      const left = i > 0 ? 1 : 0;
      const right = i < columns - 1 ? 1 : 0;
      relief[4 * k] = toHalf(height[k]);
      relief[4 * k + 1] = toHalf(((height[k + right] - height[k - left]) * perMm) / (left + right));
      relief[4 * k + 2] = toHalf((height[k + below] - height[k - above]) * acrossScale);
      relief[4 * k + 3] = toHalf(open[k]);
    }
  }
  return relief;
}
