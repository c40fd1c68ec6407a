import { clamp } from "../../math";
import type { RandomStream } from "../../random";
import { upOnScreen } from "../../weld";
import { mixMaterial } from "../field";
import type { FaceWork } from "../work";
import { GLYPHS } from "./glyphs";
import { boxAround, forEachPlatePixel } from "./patches";
import { PLATE_TONES as TONES } from "./tones";

/** Half width of the stamped V at the surface, and how far the thrown-up rim reaches, mm. */
const HALF_WIDTH = 0.42;
const RIM_REACH = 0.95;
/** Share of letters on which the stamp jumped and was struck again. */
const TWICE = 0.1;

/**
 * Hard-stamps a text, one blow a letter (now and then two), so that it reads upright for whoever looks at this face. (x, y) is
 * the middle of the left edge, `size` the height of the letters, mm. Throws on a letter that is not in the box.
 */
export function stampText(
  work: FaceWork,
  text: string,
  x: number,
  y: number,
  size: number,
  random: RandomStream,
): void {
  const up = upOnScreen(work.face);
  const cell = size / 6;
  const heavy = random.uniform(0.12, 0.34);
  const slope = random.normal(0, 0.02);
  let left = x;
  for (const letter of text) {
    const glyph = GLYPHS[letter];
    if (!glyph) throw new Error(`no stamp for "${letter}"`);
    const shiftX = left + random.normal(0, 0.04 * size);
    const shiftY = y + slope * (left - x) + random.normal(0, 0.05 * size);
    const tilt = random.normal(0, 0.05);
    const cosine = Math.cos(tilt);
    const sine = Math.sin(tilt);
    const segments: Segment[] = [];
    for (const line of glyph) {
      const points: [number, number][] = [];
      for (let n = 0; n < line.length; n += 2) {
        const u = (line[n] - 2) * cell;
        const v = (line[n + 1] - 3) * cell;
        points.push([shiftX + 2 * cell + u * cosine - v * sine, shiftY - up * (u * sine + v * cosine)]);
      }
      for (let n = 1; n < points.length; n++) segments.push([...points[n - 1], ...points[n]]);
    }
    const depth = heavy * random.uniform(0.75, 1.15);
    strike(work, segments, shiftX + 2 * cell, shiftY, size, depth, random);
    if (random.chance(TWICE)) {
      const dx = random.normal(0, 0.5);
      const dy = random.normal(0, 0.4);
      const beside = segments.map(([ax, ay, bx, by]): Segment => [ax + dx, ay + dy, bx + dx, by + dy]);
      strike(work, beside, shiftX + 2 * cell + dx, shiftY + dy, size, 0.4 * depth, random);
    }
    left += size * 0.92;
  }
}

type Segment = readonly [ax: number, ay: number, bx: number, by: number];

/** One blow: deeper on the side to which the punch leaned. */
function strike(
  work: FaceWork,
  segments: readonly Segment[],
  x: number,
  y: number,
  size: number,
  depth: number,
  random: RandomStream,
): void {
  const leanX = random.normal(0, 0.35) / size;
  const leanY = random.normal(0, 0.35) / size;
  const reach = 0.62 * size + RIM_REACH;
  const lines = Float64Array.from(segments.flat());
  forEachPlatePixel(work, boxAround(x, y, reach), (field, k, px, py) => {
    const d = distanceTo(lines, px, py);
    if (d >= RIM_REACH) return;
    const deep = depth * clamp(1 + leanX * (px - x) + leanY * (py - y), 0.25, 1.6);
    if (d < HALF_WIDTH) {
      field.z[k] = Math.min(field.z[k], field.parent[k] - deep * (1 - d / HALF_WIDTH));
      mixMaterial(field, k, TONES.bareSteel, 0.42, 0.55, 0.35);
    } else field.z[k] += 0.06 * deep * Math.exp(-(((d - HALF_WIDTH - 0.1) / 0.2) ** 2));
  });
}

/** Distance from (x, y) to the nearest of the lines, four numbers each; no more than the rim's reach, mm. */
function distanceTo(lines: Float64Array, x: number, y: number): number {
  let nearest = RIM_REACH ** 2;
  for (let n = 0; n < lines.length; n += 4) {
    const px = x - lines[n];
    const py = y - lines[n + 1];
    const dx = lines[n + 2] - lines[n];
    const dy = lines[n + 3] - lines[n + 1];
    const t = clamp((px * dx + py * dy) / (dx * dx + dy * dy || 1e-9), 0, 1);
    const ex = px - t * dx;
    const ey = py - t * dy;
    nearest = Math.min(nearest, ex * ex + ey * ey);
  }
  return Math.sqrt(nearest);
}
