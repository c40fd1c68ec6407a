import {
  type Aspect,
  BUTT_PLATE_LENGTH,
  BUTT_PLATE_WIDTH,
  extentOf,
  FILLET_HALF_WIDTH,
  FILLET_LENGTH,
  FILLET_PLATE_BEYOND,
  type FilletPlate,
  type SurfaceFace,
} from "../weld";
import { type Grid, sampleAt } from "./grid";

/**
 * One patch of a finished face. `height` is in mm outward from the face looked at: above the parent surface of plate A, for a
 * fillet above the line in which both plates meet.
 * Materials are what a camera would need, eight bits each, interleaved per pixel.
 */
export interface Patch {
  readonly grid: Grid;
  readonly height: Float32Array;
  /** sRGB red, green, blue. */
  readonly albedo: Uint8Array;
  /** Roughness, metalness, strength of brushed scratches, each 0..255 for 0..1. */
  readonly finish: Uint8Array;
  /** Direction of the brushed scratches at a quarter of the resolution: cos 2a and sin 2a as 128 + 127 v, interleaved. */
  readonly brushing: { readonly columns: number; readonly rows: number; readonly values: Uint8Array };
}

/**
 * One face of a specimen: the weld strip in full detail, and the whole plate at half of it (the strip's part of
 * `plate` is the strip, averaged two by two).
 */
export interface Surface {
  readonly face: SurfaceFace;
  readonly strip: Patch;
  readonly plate: Patch;
}

/** Half width of the finely sampled strip along the weld, mm. */
export const STRIP_HALF_WIDTH = 26;
export const STRIP_PER_MM = 8;
export const PLATE_PER_MM = 4;

export const STRIP_GRID: Grid = {
  columns: BUTT_PLATE_LENGTH * STRIP_PER_MM,
  rows: 2 * STRIP_HALF_WIDTH * STRIP_PER_MM,
  perMm: STRIP_PER_MM,
  x0: 0,
  y0: -STRIP_HALF_WIDTH,
};
export const PLATE_GRID: Grid = {
  columns: BUTT_PLATE_LENGTH * PLATE_PER_MM,
  rows: BUTT_PLATE_WIDTH * PLATE_PER_MM,
  perMm: PLATE_PER_MM,
  x0: 0,
  y0: -BUTT_PLATE_WIDTH / 2,
};

/** The same of a fillet: y across the line between the plates, positive towards the base plate, so that both rise at 45 degrees. */
export const FILLET_STRIP_GRID: Grid = { ...STRIP_GRID, columns: FILLET_LENGTH * STRIP_PER_MM };
export const FILLET_PLATE_GRID: Grid = {
  ...PLATE_GRID,
  columns: FILLET_LENGTH * PLATE_PER_MM,
  rows: 2 * FILLET_HALF_WIDTH * PLATE_PER_MM,
  y0: -FILLET_HALF_WIDTH,
};

/** Square on a plate of a fillet the fine strip reaches so far from the root corner, mm. */
export const TURNED_STRIP_WIDTH = 32;

/** Grids of the two patches of what is seen from an aspect. */
export function gridsOf(aspect: Aspect): { readonly strip: Grid; readonly plate: Grid } {
  if (aspect === "base" || aspect === "standing") return turnedGrids(aspect);
  return aspect === "fillet"
    ? { strip: FILLET_STRIP_GRID, plate: FILLET_PLATE_GRID }
    : { strip: STRIP_GRID, plate: PLATE_GRID };
}

function turnedGrids(plate: FilletPlate): { readonly strip: Grid; readonly plate: Grid } {
  const { low, high } = extentOf(plate);
  const width = FILLET_PLATE_BEYOND + TURNED_STRIP_WIDTH;
  return {
    strip: {
      ...FILLET_STRIP_GRID,
      y0: plate === "base" ? low : high - width,
      rows: width * FILLET_STRIP_GRID.perMm,
    },
    plate: { ...FILLET_PLATE_GRID, y0: low, rows: (high - low) * FILLET_PLATE_GRID.perMm },
  };
}

/** Height in mm at (x, y) mm, from the finest patch that covers the place. */
export function heightAt(surface: Pick<Surface, "strip" | "plate">, x: number, y: number): number {
  const { grid } = surface.strip;
  const inset = 0.5 / grid.perMm;
  const patch = Math.abs(y) < STRIP_HALF_WIDTH - inset ? surface.strip : surface.plate;
  return sampleAt(patch.grid, patch.height, x, y);
}
