import { clamp } from "../../math";
import { upOnScreen } from "../../weld";
import type { Surface } from "../surface";
import { benchTop } from "./bench-top";
import { type Bounce, bounceOf } from "./bounce";
import { addDetail } from "./detail";
import { gatherSheet, type Openness } from "./gather";
import { LAMP_HALF_ANGLE, type Lamp, type Picture, pictureSize, placeLamp, type View } from "./light";
import { highlight, sentLight, softFacing, TORCH_COLOUR, WORKSHOP_COLOUR, workshopReflection } from "./metal";
import { occlusionOf } from "./occlusion";
import { type Relief, reliefOf } from "./relief";
import { shadowFrom, type Visibility } from "./shadow";
import type { Sheet } from "./sheet";
import { LINEAR_OF_BYTE, screenByte } from "./tone";

/** What does not depend on the light is worked out once for a surface. */
const prepared = new WeakMap<Surface, { relief: Relief; openness: Openness }>();

function prepare(surface: Surface) {
  const known = prepared.get(surface);
  if (known) return known;
  const made = {
    relief: reliefOf(surface),
    openness: { strip: occlusionOf(surface.strip), plate: occlusionOf(surface.plate) },
  };
  prepared.set(surface, made);
  return made;
}

/**
 * Draws a part of a face under a torch as a person straight above sees it: shadows with penumbra, light sent back into
 * hollows, brushed and bare metal. Coarser than the plate's own pixels it draws finer and averages.
 */
export function renderView(surface: Surface, view: View): Picture {
  const { width, height } = pictureSize(view);
  const finer = Math.ceil(surface.plate.grid.perMm / view.perMm - 1e-9);
  if (finer <= 1) return drawView(surface, view);
  const perMm = view.perMm * finer;
  const whole = drawView(surface, {
    ...view,
    x1: view.x0 + (width * finer) / perMm,
    y1: view.y0 + (height * finer) / perMm,
    perMm,
  });
  return averaged(whole, finer);
}

function drawView(surface: Surface, view: View): Picture {
  const { relief, openness } = prepare(surface);
  const lamp = placeLamp(surface.face, view);
  const visible = shadowFrom(relief, LAMP_HALF_ANGLE, lamp);
  const bounce = bounceOf(relief, lightnessOf(surface), visible, lamp, view);
  const sheet = gatherSheet(surface, openness, view);
  addDetail(surface, sheet);
  return lightSheet(surface, sheet, view, lamp, visible, bounce);
}

/** Green channel of the plate at a place, linear. */
function lightnessOf(surface: Surface): (x: number, y: number) => number {
  const { grid, albedo } = surface.plate;
  return (x, y) => {
    const i = clamp(((x - grid.x0) * grid.perMm) | 0, 0, grid.columns - 1);
    const j = clamp(((y - grid.y0) * grid.perMm) | 0, 0, grid.rows - 1);
    return LINEAR_OF_BYTE[albedo[3 * (j * grid.columns + i) + 1]];
  };
}

/** Slopes beyond this are walls that the pixels cannot carry: what exceeds it counts a third. */
const STEEPEST = 1.6;

function lightSheet(
  surface: Surface,
  sheet: Sheet,
  view: View,
  lamp: Lamp,
  visible: Visibility,
  bounce: Bounce,
): Picture {
  const { width, height, perMm, z } = sheet;
  const up = upOnScreen(surface.face);
  const bench = benchTop(surface);
  const exposure = view.exposure ?? 1;
  const pixels = new Uint8ClampedArray(4 * width * height);
  const benchLight = new Float32Array(3);
  const firstStep = 0.9 / perMm;
  const stripStep = Math.max(firstStep, 0.6 / surface.strip.grid.perMm);
  const plateStep = Math.max(firstStep, 0.6 / surface.plate.grid.perMm);
  const stripEnd = surface.strip.grid.rows / 2 / surface.strip.grid.perMm;
  const stripMiddle = surface.strip.grid.y0 + stripEnd;
  for (let j = 0, k = 0; j < height; j++) {
    const y = sheet.y0 + (j + 0.5) / perMm;
    const below = j > 0 ? -width : 0;
    const above = j < height - 1 ? width : 0;
    const perRow = below && above ? 0.5 * perMm : perMm;
    const from = Math.abs(y - stripMiddle) < stripEnd ? stripStep : plateStep;
    let p = 4 * width * (up > 0 ? height - 1 - j : j);
    for (let i = 0; i < width; i++, k++, p += 4) {
      const x = sheet.x0 + (i + 0.5) / perMm;
      pixels[p + 3] = 255;
      if (bench.outside(x, y) > 0) {
        bench.shade(x, y, lamp, benchLight);
        for (let c = 0; c < 3; c++) pixels[p + c] = screenByte(benchLight[c] * exposure);
        continue;
      }
      const left = i > 0 ? -1 : 0;
      const right = i < width - 1 ? 1 : 0;
      let slopeX = (z[k + right] - z[k + left]) * (left && right ? 0.5 * perMm : perMm);
      let slopeY = (z[k + above] - z[k + below]) * perRow;
      const steep = Math.sqrt(slopeX * slopeX + slopeY * slopeY);
      if (steep > STEEPEST) {
        const less = (STEEPEST + (steep - STEEPEST) * 0.35) / steep;
        slopeX *= less;
        slopeY *= less;
      }
      const nz = 1 / Math.sqrt(1 + slopeX * slopeX + slopeY * slopeY);
      const nx = -slopeX * nz;
      const ny = -slopeY * nz;
      const dx = lamp.x - x;
      const dy = lamp.y - y;
      const dz = lamp.z - z[k];
      const flat = Math.sqrt(dx * dx + dy * dy) || 1e-6;
      const far = Math.sqrt(flat * flat + dz * dz);
      const nearness = lamp.power * ((lamp.distance * lamp.distance) / (far * far));
      const facing = (nx * dx + ny * dy + nz * dz) / far;
      const lit = facing > -LAMP_HALF_ANGLE ? visible(x, y, z[k], dx / flat, dy / flat, dz / flat, from) : 0;
      const soft = softFacing(facing);
      // the normal bends inside a pixel: a wider highlight instead of white dots
      const bend = (z[k + right] + z[k + left] + z[k + above] + z[k + below] - 4 * z[k]) * perMm;
      const grain = clamp(sheet.rough[k], 0.12, 1);
      const rough = Math.min(
        1,
        Math.sqrt(grain * grain + Math.min(0.5, 0.3 * bend * bend + 0.1 * Math.max(0, steep - 0.9))),
      );
      const together = Math.min(1, Math.sqrt(sheet.cosine[k] * sheet.cosine[k] + sheet.sine[k] * sheet.sine[k]));
      const brush = sheet.brush[k] * together;
      const cosine = together > 0 ? sheet.cosine[k] / together : 1;
      const sine = together > 0 ? sheet.sine[k] / together : 0;
      const glint = highlight(nx, ny, nz, dx / far, dy / far, dz / far, soft, rough, brush, cosine, sine);
      const halfway = Math.sqrt(Math.max(0, 0.5 * (1 + dz / far)));
      const schlick = (1 - halfway) ** 5;
      const direct = nearness * lit * soft;
      const open = sheet.open[k];
      // light that goes to and fro between pale walls brightens a hollow
      const workshop = lamp.ambient * (open < 1 ? open / (1 - 0.4 * (1 - open)) : open);
      const diffuse = Math.PI * (0.62 + 0.38 * nz + 0.12 * ny * up) * 0.95 * workshop;
      const mirror = workshopReflection(nx, ny * up, nz, rough) * (1 - 0.35 * rough) * workshop;
      const bounced = nearness * bounce(x, y) * (0.1 + 0.62 * Math.max(0, 1 - open));
      const metal = clamp(sheet.metal[k], 0, 1);
      for (let c = 0; c < 3; c++) {
        const albedo = c === 0 ? sheet.red[k] : c === 1 ? sheet.green[k] : sheet.blue[k];
        const torch = TORCH_COLOUR[c];
        const hall = WORKSHOP_COLOUR[c];
        const light = sentLight(
          albedo,
          metal,
          schlick,
          glint,
          direct * torch,
          diffuse * hall,
          mirror * hall,
          bounced * torch,
        );
        pixels[p + c] = screenByte(light * exposure);
      }
    }
  }
  return { width, height, pixels };
}

/** Means of blocks of n x n pixels. */
function averaged(picture: Picture, n: number): Picture {
  const width = Math.floor(picture.width / n);
  const height = Math.floor(picture.height / n);
  const pixels = new Uint8ClampedArray(4 * width * height);
  for (let j = 0, p = 0; j < height; j++) {
    for (let i = 0; i < width; i++) {
      for (let c = 0; c < 4; c++, p++) {
        let sum = 0;
        for (let b = 0; b < n; b++) {
          for (let a = 0; a < n; a++) sum += picture.pixels[4 * ((n * j + b) * picture.width + n * i + a) + c];
        }
        pixels[p] = sum / (n * n);
      }
    }
  }
  return { width, height, pixels };
}
