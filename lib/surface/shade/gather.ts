import { ease } from "../../math";
import type { Surface } from "../surface";
import { pictureSize, type View } from "./light";
import { rowSampler } from "./row-sampler";
import { createPlanes, SHEET_PLANES, type Sheet } from "./sheet";

/** Width over which the strip passes into the plate patch, mm: their sharpness differs. */
const SEAM = 1.5;

/** Openness to the workshop's light of both patches. */
export interface Openness {
  readonly strip: Float32Array;
  readonly plate: Float32Array;
}

/** How much of the strip (1) rather than of the coarser plate patch (0) is shown at y. */
export function stripShare(surface: Surface, y: number): number {
  const { grid } = surface.strip;
  const middle = grid.y0 + grid.rows / 2 / grid.perMm;
  const edge = grid.rows / 2 / grid.perMm - 1 / grid.perMm;
  return ease(edge, edge - SEAM, Math.abs(y - middle));
}

/** Heights and materials of a view, the strip inside, the plate patch outside. */
export function gatherSheet(surface: Surface, openness: Openness, view: View): Sheet {
  const { width, height } = pictureSize(view);
  const planes = createPlanes(width * height);
  const fine = rowSampler(surface.strip, openness.strip, view.x0, view.perMm, width);
  const coarse = rowSampler(surface.plate, openness.plate, view.x0, view.perMm, width);
  for (let j = 0; j < height; j++) {
    const y = view.y0 + (j + 0.5) / view.perMm;
    const share = view.perMm <= surface.plate.grid.perMm ? 0 : stripShare(surface, y);
    if (share > 0) fine.read(y);
    if (share < 1) coarse.read(y);
    for (const plane of SHEET_PLANES) {
      const from = share > 0 ? fine.planes[plane] : coarse.planes[plane];
      const to = planes[plane];
      to.set(from, j * width);
      if (share <= 0 || share >= 1) continue;
      const other = coarse.planes[plane];
      for (let i = 0, k = j * width; i < width; i++, k++) to[k] += (other[i] - to[k]) * (1 - share);
    }
  }
  return { width, height, perMm: view.perMm, x0: view.x0, y0: view.y0, ...planes };
}
