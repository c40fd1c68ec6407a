import { clamp, ease, mix } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, gradient1, gradient2, value1 } from "../../surface";
import { mixColour, mixMaterial } from "../field";
import { scaled } from "../imperfections/tones";
import type { Range } from "../runs";
import { levelBetweenPlates } from "../runs/groove";
import type { FaceWork } from "../work";
import { crownAt } from "./crown-at";
import { PLATE_TONES as TONES } from "./tones";

/** The cut of a thin disc or a saw, mm: how far in it stands, its fall per mm, distance of its lines. */
const SAWN: { readonly inset: Range; readonly lines: Range; readonly slant: number } = {
  inset: [0.35, 1.2],
  lines: [0.2, 0.34],
  slant: 0.07,
};

/**
 * The tab was cut off beside the plate's edge and the rest trimmed by a second, steeper cut: a bevel with straight lines
 * that do not run quite alike, a torn burr along its upper edge, blue where the disc burnt it.
 */
export function sawEnd(work: FaceWork, end: number, random: RandomStream): void {
  const { strip } = work;
  const levelAt = levelBetweenPlates(work);
  const crown = crownAt(work, end, levelAt);
  const inset = random.uniform(...SAWN.inset);
  const fall = (crown + random.uniform(0.1, 0.5)) / inset;
  const slant = random.normal(0, SAWN.slant);
  const pitch = random.uniform(...SAWN.lines);
  // a cut from either side meets in a step
  const meets = random.uniform(-6, 6);
  const step = random.uniform(-0.35, 0.35);
  const burnt = random.uniform(0, 0.4);
  const rusty = random.uniform(0, 0.35);
  const seed = random.seed();
  const inward = end === 0 ? 1 : -1;
  forEachPixel(strip.grid, { x0: end - 7, x1: end + 7, y0: -24, y1: 24 }, (k, x, y, i) => {
    if (strip.bead[k] <= 0.02) return;
    const second = ease(-1.6, 1.6, y - meets + 0.9 * gradient1(x / 2.1, seed + 11));
    const lean = mix(1, -0.6, second) * slant;
    const away = (x - end) * inward + lean * (y - meets) + step * (1 - second);
    const along = away + 0.05 * gradient1(y / 7, seed) + 0.11 * second * y * slant;
    const lines =
      mix(value1(along / pitch, seed + 1), value1(along / pitch, seed + 2), second) *
        clamp(0.6 + 0.7 * gradient2(x / 1.2, y / 6, seed + 3), 0, 1.2) +
      0.5 * value1(along / (0.4 * pitch), seed + 4);
    // the disc wandered, and nicked what it was to leave
    const wander = 0.22 * gradient1(y / 3.7, seed + 9) + 0.12 * gradient2(x / 0.8, y / 1.3, seed + 12);
    const face = levelAt(i, y) - 0.1 + fall * away + 0.02 * lines + wander;
    const above = strip.z[k] - face;
    const nicked = 0.25 + gradient1(y / 0.8, seed + 5) + 0.7 * gradient1(y / 2.6, seed + 6);
    if (above <= 0) {
      // the burr hangs over its upper edge
      const burr = clamp(nicked, 0, 1) * Math.exp(above / 0.07);
      strip.z[k] += 0.09 * burr;
      mixColour(strip, k, TONES.bareSteel, 0.5 * burr);
      return;
    }
    const share = ease(0, 0.12, above);
    strip.z[k] -= above * ease(0, 0.08, above);
    const light = 0.78 + 0.1 * lines + 0.14 * gradient2(x / 2, y / 4, seed + 7);
    mixMaterial(strip, k, scaled(TONES.groundSteel, clamp(light, 0.3, 0.95)), 0.5, 0.5, 0.86 * share);
    const hot = burnt * clamp(0.15 + gradient2(x / 1.6, y / 3.4, seed + 8), 0, 0.6);
    mixColour(strip, k, TONES.blue, hot * share);
    mixColour(strip, k, TONES.rust, rusty * clamp(gradient2(x / 0.9, y / 1.4, seed + 10), 0, 0.6) * share);
    strip.brush[k] += (0.5 - strip.brush[k]) * share;
    strip.brushAngle[k] = Math.PI / 2 + lean;
  });
}
