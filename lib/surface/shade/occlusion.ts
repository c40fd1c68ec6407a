import { boxBlur } from "../blur";
import type { Patch } from "../surface";

/** Radius of the surroundings looked at in mm, how strongly a hollow of it darkens, slope that still counts little, and the steepest that counts. */
const SCALES = [
  { radius: 0.22, strength: 0.55, free: 0.1, most: 1.6 },
  { radius: 0.7, strength: 0.95, free: 0.14, most: 1.5 },
  { radius: 2.2, strength: 1, free: 0.1, most: 1.2 },
] as const;

/**
 * How much of the workshop's light reaches each pixel, about 0.2..1.1: what lies below its surroundings gets less. A free
 * slope such as a toe counts quadratically, else every toe would be drawn in ink.
 */
export function occlusionOf({ grid, height }: Pick<Patch, "grid" | "height">): Float32Array {
  const open = new Float32Array(height.length).fill(1);
  for (const { radius, strength, free, most } of SCALES) {
    const reach = Math.max(1, Math.round(radius * grid.perMm));
    const mean = boxBlur(height, grid.columns, grid.rows, reach, reach, 2);
    for (let k = 0; k < open.length; k++) {
      const below = (mean[k] - height[k]) / radius;
      if (below > 0) {
        const counted = below > free ? Math.min(below - 0.5 * free, most) : (0.5 * below * below) / free;
        open[k] /= 1 + strength * counted;
      } else open[k] *= 1 + 0.1 * Math.min(-below, 0.8);
    }
  }
  return open;
}
