import { type Grid, noiseField } from "../../surface";

/** Noise over the strip in which the ripples of all runs are bent, forked and strengthened. */
export interface RippleNoise {
  readonly bend: Float32Array;
  readonly bendFine: Float32Array;
  readonly fork: Float32Array;
  readonly strength: Float32Array;
}

/** Draws the noise for runs that lie between the rows given in mm. */
export function drawRippleNoise(grid: Grid, seed: number, rows: readonly [number, number]): RippleNoise {
  return {
    bend: noiseField(grid, 4.2, 3.2, seed + 21, 1, 0.5, rows),
    bendFine: noiseField(grid, 1.25, 1.1, seed + 22, 1, 0.5, rows),
    fork: noiseField(grid, 5, 2.2, seed + 23, 1, 0.5, rows),
    strength: noiseField(grid, 4.6, 2.4, seed + 24, 1, 0.5, rows),
  };
}
