import { upOnScreen } from "../../weld";
import type { Patch, Surface } from "../surface";
import { type Picture, pictureSize, type View } from "./light";
import { sweepShadow } from "./sweep-shadow";
import { LINEAR_OF_BYTE, screenByte } from "./tone";

/** Shadow passes from light to dark over this height, mm. */
const SOFT = 0.03;
const CODES = 2048;
const BRIGHTEST = 2.4;
const BYTE = Uint8Array.from({ length: CODES + 1 }, (_, n) => screenByte((n / CODES) ** 2 * BRIGHTEST));
/** Square root of the linear light of an albedo byte, in codes of the table above. */
const CODE_OF_BYTE = Float32Array.from(LINEAR_OF_BYTE, (light) => CODES * Math.sqrt(light / BRIGHTEST));
const BENCH = 0xff25211e;

const GLOSS = 256;
/** Highlight (Blinn) over the cosine between normal and half vector for three steps of roughness. */
const GLINT = [14, 34, 80].map((power) =>
  Float32Array.from({ length: GLOSS + 1 }, (_, n) => ((power + 2) / 16) * (n / GLOSS) ** power),
);

/**
 * Cheap drawing for machines without a graphics unit: diffuse light, a plain highlight and a hard-edged swept shadow under a
 * far lamp. The strip alone is read when the view lies within it, else the plate patch.
 */
export function renderQuick(surface: Surface, view: View): Picture {
  const { width, height } = pictureSize(view);
  const patch = patchFor(surface, view);
  const sampled = sampleView(patch, view, width, height, surface.face === "fillet");
  const up = upOnScreen(surface.face);
  const around = (view.light.azimuth * Math.PI) / 180;
  const above = (view.light.elevation * Math.PI) / 180;
  const ux = Math.cos(around);
  const uy = up * Math.sin(around);
  const shaded = sweepShadow(sampled.z, width, height, view.perMm, ux, uy, Math.tan(above));
  const pixels = new Uint8ClampedArray(4 * width * height);
  light(patch, sampled, shaded, view, width, height, [ux * Math.cos(above), uy * Math.cos(above), Math.sin(above)], {
    words: new Uint32Array(pixels.buffer),
    flipped: up > 0,
  });
  return { width, height, pixels };
}

function patchFor(surface: Surface, view: View): Patch {
  const { strip, plate } = surface;
  const inside = view.y0 >= strip.grid.y0 && view.y1 <= strip.grid.y0 + strip.grid.rows / strip.grid.perMm;
  return inside && view.perMm > plate.grid.perMm ? strip : plate;
}

/** Height of each pixel and the pixel of the patch it shows, -1 off the plate. */
function sampleView(patch: Patch, view: View, width: number, height: number, isSteep: boolean) {
  const { grid } = patch;
  const z = new Float32Array(width * height).fill(-10);
  const source = new Int32Array(width * height).fill(-1);
  const across = places(width, view.x0, grid.x0, view.perMm, grid.perMm, grid.columns);
  const down = places(height, view.y0, grid.y0, view.perMm, grid.perMm, grid.rows);
  // on steep plates the nearest rows would stand like steps
  const smooth = isSteep || view.perMm > 1.01 * grid.perMm;
  for (let j = 0; j < height; j++) {
    const row = down.nearest[j] * grid.columns;
    if (row < 0) continue;
    const low = down.lower[j] * grid.columns;
    const v = down.share[j];
    for (let i = 0, k = j * width; i < width; i++, k++) {
      const column = across.nearest[i];
      if (column < 0) continue;
      source[k] = row + column;
      if (!smooth) {
        z[k] = patch.height[row + column];
        continue;
      }
      const q = low + across.lower[i];
      const u = across.share[i];
      const below = patch.height[q] + u * (patch.height[q + 1] - patch.height[q]);
      const p = q + grid.columns;
      z[k] = below + v * (patch.height[p] + u * (patch.height[p + 1] - patch.height[p]) - below);
    }
  }
  return { z, source };
}

/** For every pixel along one direction: the nearest sample (-1 outside), the lower of the two around it, and the share of the upper. */
function places(pixels: number, from: number, origin: number, perMm: number, gridPerMm: number, count: number) {
  const nearest = new Int32Array(pixels);
  const lower = new Int32Array(pixels);
  const share = new Float32Array(pixels);
  for (let n = 0; n < pixels; n++) {
    const place = (from + (n + 0.5) / perMm - origin) * gridPerMm - 0.5;
    const whole = Math.round(place);
    nearest[n] = whole < 0 || whole >= count ? -1 : whole;
    lower[n] = Math.min(count - 2, Math.max(0, Math.floor(place)));
    share[n] = Math.min(1, Math.max(0, place - lower[n]));
  }
  return { nearest, lower, share };
}

function light(
  patch: Patch,
  { z, source }: { z: Float32Array; source: Int32Array },
  shaded: Float32Array,
  view: View,
  width: number,
  height: number,
  [lx, ly, lz]: readonly [number, number, number],
  { words, flipped }: { words: Uint32Array; flipped: boolean },
): void {
  const { albedo, finish } = patch;
  const { power = 3.4, ambient = 0.32 } = view.light;
  const direct = (0.36 * power * (view.exposure ?? 1)) / lz ** 0.35;
  const around = 0.95 * ambient * (view.exposure ?? 1);
  const half = 1 / Math.sqrt(lx * lx + ly * ly + (lz + 1) * (lz + 1));
  const hx = lx * half;
  const hy = ly * half;
  const hz = (lz + 1) * half;
  const slope = 0.5 * view.perMm;
  const byte = (code: number) => BYTE[code >= CODES ? CODES : code | 0];
  for (let j = 0, k = 0; j < height; j++) {
    const below = j > 0 ? -width : 0;
    const above = j < height - 1 ? width : 0;
    let out = (flipped ? height - 1 - j : j) * width;
    for (let i = 0; i < width; i++, k++, out++) {
      const from = source[k];
      if (from < 0) {
        words[out] = BENCH;
        continue;
      }
      const slopeX = (z[i < width - 1 ? k + 1 : k] - z[i > 0 ? k - 1 : k]) * slope;
      const slopeY = (z[k + above] - z[k + below]) * slope;
      const nz = 1 / Math.sqrt(1 + slopeX * slopeX + slopeY * slopeY);
      const facing = (lz - slopeX * lx - slopeY * ly) * nz;
      const hidden = (shaded[k] - z[k]) / SOFT;
      const lit = facing > 0 && hidden < 1 ? facing * (hidden > 0 ? 1 - hidden : 1) * direct : 0;
      const glossy = (hz - slopeX * hx - slopeY * hy) * nz;
      const n = 3 * from;
      const rough = finish[n];
      const table = GLINT[rough > 150 ? 0 : rough > 100 ? 1 : 2];
      const metal = finish[n + 1] / 255;
      const mirror = glossy > 0 ? lit * table[(glossy * GLOSS) | 0] * (0.06 + 0.5 * metal) : 0;
      const light = (lit + around * (0.6 + 0.4 * nz)) * (1 - 0.45 * metal) + mirror;
      const root = Math.sqrt(light);
      const red = byte(CODE_OF_BYTE[albedo[n]] * root);
      const green = byte(CODE_OF_BYTE[albedo[n + 1]] * root);
      const blue = byte(CODE_OF_BYTE[albedo[n + 2]] * root);
      words[out] = 0xff000000 | (blue << 16) | (green << 8) | red;
    }
  }
}
