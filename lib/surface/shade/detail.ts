import { clamp, ease } from "../../math";
import { gradient2, hash01 } from "../noise";
import type { Surface } from "../surface";
import { stripShare } from "./gather";
import type { Sheet } from "./sheet";

/** Invented grain by wavelength in mm: none of it is measured, it only keeps magnified metal from looking like wax. */
const GRAINS = [
  { wave: 0.34, height: 0.0022, seed: 901 },
  { wave: 0.14, height: 0.0019, seed: 902 },
  { wave: 0.066, height: 0.0011, seed: 903 },
] as const;
/** Scratches run along this many fixed directions; a continuously turning frame would swirl like a fingerprint. */
const DIRECTIONS = 12;

/** Pixels that a wave must cover to be drawn. */
const drawn = (wave: number, perMm: number): number => ease(1.6, 2.6, wave * perMm);
/** A patch carries no waves shorter than two and a half of its own pixels: there the invented ones begin. */
const missing = (wave: number, patchPerMm: number): number => ease(3.2, 2.2, wave * patchPerMm);

/** Adds grain and fine scratches below the resolution of the surface. */
export function addDetail(surface: Surface, sheet: Sheet): void {
  const { perMm, width } = sheet;
  for (let j = 0; j < sheet.height; j++) {
    const y = sheet.y0 + (j + 0.5) / perMm;
    const share = stripShare(surface, y);
    const amounts = GRAINS.map(({ wave }) => {
      const fine = missing(wave, surface.strip.grid.perMm);
      const coarse = missing(wave, surface.plate.grid.perMm);
      return drawn(wave, perMm) * (coarse + (fine - coarse) * share);
    });
    const [coarseGrain, middleGrain, fineGrain] = amounts;
    if (coarseGrain + middleGrain + fineGrain < 0.02) continue;
    for (let i = 0, k = j * width; i < width; i++, k++) {
      const x = sheet.x0 + (i + 0.5) / perMm;
      let grain = 0;
      for (let n = 0; n < GRAINS.length; n++) {
        if (amounts[n] < 0.02) continue;
        const { wave, height, seed } = GRAINS[n];
        grain += amounts[n] * height * gradient2(x / wave, y / wave, seed);
      }
      const brush = sheet.brush[k] * Math.hypot(sheet.cosine[k], sheet.sine[k]);
      const lines = scratches(sheet, k, x, y, brush, coarseGrain, middleGrain);
      sheet.z[k] += grain * (1 - 0.7 * brush) * (0.4 + sheet.rough[k]) + lines;
      const tone = 1 + 30 * grain * (1 - brush) + 34 * lines + 0.05 * middleGrain * (hash01(i, j, 77) - 0.5);
      sheet.red[k] *= tone;
      sheet.green[k] *= tone;
      sheet.blue[k] *= tone;
    }
  }
}

/** Height of the scratches at a place, mm: along the brushing, or along the weld on bare bead metal. */
function scratches(
  sheet: Sheet,
  k: number,
  x: number,
  y: number,
  brush: number,
  coarse: number,
  middle: number,
): number {
  if (brush > 0.05) {
    const turns = (Math.atan2(sheet.sine[k], sheet.cosine[k]) / (2 * Math.PI) + 1) % 1;
    const nearest = Math.floor(turns * DIRECTIONS);
    const between = turns * DIRECTIONS - nearest;
    let sum = 0;
    for (let n = 0; n < 2; n++) {
      const weight = n ? between : 1 - between;
      if (weight < 0.02) continue;
      const direction = (nearest + n) % DIRECTIONS;
      const angle = (direction * Math.PI) / DIRECTIONS;
      const along = x * Math.cos(angle) + y * Math.sin(angle);
      const across = y * Math.cos(angle) - x * Math.sin(angle);
      if (coarse > 0.02) sum += weight * coarse * gradient2(across * 3.3, along * 0.1, 911 + direction);
      if (middle > 0.02) {
        sum += weight * middle * gradient2(across * 7.5, along * 0.16, 931 + direction);
        sum += 0.8 * weight * middle * gradient2(across * 15, along * 0.3, 951 + direction);
      }
    }
    return 0.0052 * brush * sum;
  }
  const bare = clamp((sheet.metal[k] - 0.3) * 1.4, 0, 1);
  return bare > 0 && middle > 0.02 ? 0.0022 * bare * middle * gradient2(x * 0.5, y * 8.3, 971) : 0;
}
