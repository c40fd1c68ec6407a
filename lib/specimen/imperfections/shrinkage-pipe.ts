import { clamp, ease, hypot, mix } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, gradient1, gradient2, hash01, sampleAt } from "../../surface";
import { type Field, mixMaterial } from "../field";
import { roundOff } from "./round-off";
import { between, scaled, TONES } from "./tones";

/** A hole that the last metal of a crater tore open as it shrank, before it is cut; mm and radians. */
export interface ShrinkagePipe {
  readonly x: number;
  readonly y: number;
  /** Of the circle as large as its mouth. */
  readonly radius: number;
  readonly depth: number;
  /** Long over short axis, the long axis's direction, and how far the long axis is bent, in radii. */
  readonly stretch: number;
  readonly turn: number;
  readonly bow: number;
  /** Where the deepest place lies off the middle, in radii. */
  readonly offA: number;
  readonly offB: number;
  /** Share of the radius by which its outline departs from an oval, and how torn it is in small. */
  readonly uneven: number;
  readonly torn: number;
  /** Shrunken metal round it: reach in radii, depth, number of ridges that run into the hole. */
  readonly sunkReach: number;
  readonly sunk: number;
  readonly ridges: number;
  readonly ridge: number;
  readonly seed: number;
}

/** A mouth is read at 35 % of the depth: the edge is this much wider. */
const MOUTH_TO_EDGE = 1.13;
const DEEPEST = 2.6;

/** Draws a pipe whose mouth is about `diameter` mm. */
export function drawShrinkagePipe(random: RandomStream, x: number, y: number, diameter: number): ShrinkagePipe {
  const radius = (MOUTH_TO_EDGE * diameter) / 2;
  const large = ease(0.3, 0.9, radius);
  return {
    x,
    y,
    radius,
    depth: Math.min(DEEPEST, 0.18 + radius * random.uniform(0.75, 1.7)),
    stretch: random.uniform(1.1, 1.75),
    turn: random.normal(0, 0.8),
    bow: random.uniform(-0.3, 0.3),
    offA: random.uniform(-0.45, 0.45),
    offB: random.uniform(-0.35, 0.35),
    uneven: random.uniform(0.14, 0.3),
    torn: mix(0.03, 0.07, large) * random.uniform(0.6, 1.4),
    sunkReach: random.uniform(1.9, 3.6),
    sunk: random.uniform(0.06, 0.26),
    ridges: random.uniform(0.9, 2.2),
    ridge: random.uniform(0.02, 0.06),
    seed: random.seed(),
  };
}

interface Touched {
  readonly k: number;
  readonly share: number;
  /** Depth as a share of the whole in the hole, noise round it. */
  readonly value: number;
  readonly part: "hole" | "round";
}
export type PipeTrace = readonly Touched[];

/** Place in the hole in units of its outline (1 on the edge), and the direction from its middle. */
function placeIn(pipe: ShrinkagePipe, px: number, py: number): { d: number; steep: number; angle: number } {
  const { seed, radius } = pipe;
  const c = Math.cos(pipe.turn);
  const s = Math.sin(pipe.turn);
  const root = Math.sqrt(pipe.stretch);
  const a = ((px - pipe.x) * c + (py - pipe.y) * s) / (radius * root);
  const b = (((py - pipe.y) * c - (px - pipe.x) * s) * root) / radius + pipe.bow * a * a - 0.25 * pipe.bow;
  const angle = Math.atan2(b, a);
  const ca = Math.cos(angle);
  const sa = Math.sin(angle);
  const small = Math.min(0.42, 0.6 * radius);
  const edge =
    1 +
    pipe.uneven * 1.6 * gradient2(0.9 * ca + 2, 0.9 * sa, seed) +
    0.6 * pipe.uneven * gradient2(2 * ca, 2 * sa + 4, seed + 1) +
    pipe.torn * gradient2(px / small, py / small, seed + 2);
  // one wall overhangs, the other is a ramp
  const steep = clamp(0.5 + 0.9 * (pipe.offA * ca + pipe.offB * sa), 0, 1);
  return { d: hypot(a, b) / Math.max(0.45, edge), steep, angle };
}

/** Ridges of the skin drawn into the hole as it shrank, -1..1: uneven rays that fork and die away. */
function ridgesAt(pipe: ShrinkagePipe, angle: number, d: number): number {
  const f = pipe.ridges;
  const ray = gradient2(f * 2 * Math.cos(angle) + 0.3 * d, f * 2 * Math.sin(angle), pipe.seed + 3);
  const finer = gradient2(f * 4.4 * Math.cos(angle), f * 4.4 * Math.sin(angle) + 0.5 * d, pipe.seed + 4);
  return 1 - 2.4 * Math.abs(ray) - 0.8 * Math.abs(finer);
}

/** Cuts the pipe: the skin round it sinks in ridges towards its mouth, its rim is torn, its bottom lies off the middle. */
export function cutShrinkagePipe(field: Field, pipe: ShrinkagePipe): PipeTrace {
  const { grid, z } = field;
  const trace: Touched[] = [];
  const { radius, depth, seed } = pipe;
  const reach = 1.3 * radius * pipe.sunkReach;
  const plane = sampleAt(grid, z, pipe.x, pipe.y);
  const heights: [k: number, height: number][] = [];
  const rim: number[] = [];
  const box = { x0: pipe.x - reach, x1: pipe.x + reach, y0: pipe.y - reach, y1: pipe.y + reach };
  forEachPixel(grid, box, (k, px, py) => {
    const { d, steep, angle } = placeIn(pipe, px, py);
    const far =
      (hypot(px - pipe.x, py - pipe.y) / (radius * pipe.sunkReach)) * (1 + 0.4 * gradient1(angle * 0.9, seed + 5));
    if (far > 1 && d > 1) return;
    const fall = (1 - Math.min(1, far) ** 2) ** 2;
    let height = z[k] - pipe.sunk * fall * (0.7 + 0.6 * gradient2(px / 1.1, py / 0.9, seed + 6));
    const rays = ridgesAt(pipe, angle, d);
    if (d >= 1) {
      height += pipe.ridge * fall * ease(0.9, 1.25, d) * rays;
      // scraps of the torn skin stand up at the edge, elsewhere it is drawn in
      const scrap = gradient1(angle * 1.9, seed + 7);
      height += 0.05 * scrap * ease(1.45, 1, d) * Math.min(1, radius / 0.5);
      if (d < 1.9) trace.push({ k, part: "round", share: ease(1.9, 1, d), value: rays + scrap });
    } else {
      const q = Math.min(1, d);
      const wall = Math.max(0, 1 - q ** mix(1.5, 3.4, steep)) ** mix(1.05, 0.6, steep);
      const dendrites = 0.05 * gradient2(px / 0.3, py / 0.3, seed + 8) + 0.06 * gradient2(angle * 3, 4 * d, seed + 9);
      const evenedOut = mix(height, plane - pipe.sunk, 0.6 * ease(1, 0.6, d));
      height = evenedOut - depth * wall * (1 + (wall > 0.2 ? dendrites : 0));
      trace.push({ k, part: "hole", share: ease(1.02, 0.86, d), value: wall });
    }
    heights.push([k, height]);
    if (d > 0.7 && d < 1.25) rim.push(k);
    if (d < 1.6) field.clean[k] = 1;
  });
  for (const [k, height] of heights) z[k] = height;
  roundOff(field, rim, 0.8);
  return trace;
}

/** Rough, oxide-grey walls, dark at the bottom; round the mouth the skin is dull in places and bright where it tore. */
export function paintShrinkagePipe(field: Field, pipe: ShrinkagePipe, trace: PipeTrace): void {
  const slender = clamp((pipe.depth / pipe.radius - 0.8) / 1.1, 0.2, 1);
  for (const { k, part, share, value } of trace) {
    const grain = hash01(k % 9973, k % 7919, pipe.seed);
    if (part === "round") {
      const dull = clamp(0.22 - 0.28 * value, 0, 0.42);
      mixMaterial(field, k, scaled(TONES.skin, 0.9), 0.56, 0.35, dull * share);
      continue;
    }
    mixMaterial(
      field,
      k,
      between(TONES.oxide, TONES.wall, 0.35 + 0.5 * grain),
      0.66,
      0.25,
      0.8 * share * ease(0, 0.3, value),
    );
    mixMaterial(field, k, TONES.shade, 0.8, 0.05, (0.15 + 0.45 * slender) * share * ease(0.6, 1, value));
    field.brush[k] *= 1 - share;
  }
}
