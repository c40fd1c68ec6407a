import { boxBlur } from "../blur";
import type { Lamp, View } from "./light";
import type { Relief } from "./relief";
import type { Visibility } from "./shadow";

/** Light sent back by the lit metal around (x, y): what makes the walls of a shadowed hollow visible. */
export type Bounce = (x: number, y: number) => number;

const LEVEL = 3;
/** mm looked at beyond the view. */
const MARGIN = 4;

/** One bounce on a grid of 1 mm: direct light (with shadow) times lightness of the metal, blurred. */
export function bounceOf(
  relief: Relief,
  lightness: (x: number, y: number) => number,
  visible: Visibility,
  lamp: Lamp,
  view: View,
): Bounce {
  const level = relief[LEVEL];
  const step = 1 / level.perMm;
  const bounded = (value: number, end: number) => Math.min(end - 1, Math.max(0, value));
  const i0 = bounded(Math.floor((view.x0 - MARGIN - level.x0) / step), level.columns);
  const i1 = bounded(Math.ceil((view.x1 + MARGIN - level.x0) / step), level.columns);
  const j0 = bounded(Math.floor((view.y0 - MARGIN - level.y0) / step), level.rows);
  const j1 = bounded(Math.ceil((view.y1 + MARGIN - level.y0) / step), level.rows);
  const columns = Math.max(2, i1 - i0 + 1);
  const rows = Math.max(2, j1 - j0 + 1);
  const sent = new Float32Array(columns * rows);
  for (let j = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++) {
      const a = Math.min(level.columns - 1, i + i0);
      const b = Math.min(level.rows - 1, j + j0);
      const k = b * level.columns + a;
      const { z } = level;
      const x = level.x0 + (a + 0.5) * step;
      const y = level.y0 + (b + 0.5) * step;
      const slopeX = (z[a < level.columns - 1 ? k + 1 : k] - z[a > 0 ? k - 1 : k]) / (2 * step);
      const slopeY = (z[b < level.rows - 1 ? k + level.columns : k] - z[b > 0 ? k - level.columns : k]) / (2 * step);
      const dx = lamp.x - x;
      const dy = lamp.y - y;
      const dz = lamp.z - z[k];
      const flat = Math.hypot(dx, dy) || 1e-6;
      const facing =
        (dz - slopeX * dx - slopeY * dy) / (Math.hypot(flat, dz) * Math.sqrt(1 + slopeX * slopeX + slopeY * slopeY));
      if (facing <= 0) continue;
      const seen = visible(x, y, z[k], dx / flat, dy / flat, dz / flat, step * 0.7);
      sent[j * columns + i] = facing * seen * (0.25 + 0.5 * lightness(x, y));
    }
  }
  const spread = boxBlur(sent, columns, rows, 1, 1, 2);
  const originX = level.x0 + (i0 + 0.5) * step;
  const originY = level.y0 + (j0 + 0.5) * step;
  return (x, y) => {
    const fi = Math.min(columns - 1.001, Math.max(0, (x - originX) / step));
    const fj = Math.min(rows - 1.001, Math.max(0, (y - originY) / step));
    const i = fi | 0;
    const k = (fj | 0) * columns + i;
    const low = spread[k] + (fi - i) * (spread[k + 1] - spread[k]);
    const high = spread[k + columns] + (fi - i) * (spread[k + columns + 1] - spread[k + columns]);
    return low + (fj - (fj | 0)) * (high - low);
  };
}
