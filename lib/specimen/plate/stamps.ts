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
  forEachPlatePixel(work, boxAround(x, y, reach), (field, k, px, py) => {
    let d = RIM_REACH;
    for (const segment of segments) d = Math.min(d, distanceTo(segment, px, py));
    if (d >= RIM_REACH) return;
    const deep = depth * clamp(1 + leanX * (px - x) + leanY * (py - y), 0.25, 1.6);
    if (d < HALF_WIDTH) {
      field.z[k] = Math.min(field.z[k], field.parent[k] - deep * (1 - d / HALF_WIDTH));
      mixMaterial(field, k, TONES.bareSteel, 0.42, 0.55, 0.35);
    } else field.z[k] += 0.06 * deep * Math.exp(-(((d - HALF_WIDTH - 0.1) / 0.2) ** 2));
  });
}

function distanceTo([ax, ay, bx, by]: Segment, x: number, y: number): number {
  const dx = bx - ax;
  const dy = by - ay;
  const t = clamp(((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1e-9), 0, 1);
  return Math.sqrt((x - ax - t * dx) ** 2 + (y - ay - t * dy) ** 2);
}
