import { clamp, ease, hypot } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, gradient1, gradient2, sampleAt } from "../../surface";
import { type Field, mixMaterial } from "../field";
import { between, scaled, TONES } from "./tones";

/** Metal that fell on the old bead and froze before it wetted in, mm and radians. */
export interface RestartLump {
  /** Number of its run in the field. */
  readonly run: number;
  readonly x: number;
  readonly y: number;
  /** Half axes, the first along `turn`. */
  readonly long: number;
  readonly short: number;
  readonly turn: number;
  readonly height: number;
  /** Towards where it did wet in, and how much of its border: 0 nearly nowhere .. 1 nearly all round. */
  readonly wettedAt: number;
  readonly wetted: number;
  readonly seed: number;
}

/** A drop is no blade: its least half width, mm, grows with its height, and it is not much longer than wide. */
const LEAST_FOOT = 0.35;
const FOOT = 0.5;
const LONGEST = 1.7;

/** Draws a lump about `height` mm high on a run at (x, y). */
export function drawLump(
  random: RandomStream,
  place: { run: number; x: number; y: number; halfWidth: number; height: number },
): RestartLump {
  const { run, x, y, halfWidth, height } = place;
  const short = Math.max(halfWidth * random.uniform(0.42, 0.72), LEAST_FOOT + FOOT * height);
  return {
    run,
    x,
    y: y + random.pick([-1, 1]) * halfWidth * random.uniform(0.08, 0.34),
    long: Math.min(Math.max(short, 1.3 + 0.5 * height) * random.uniform(1, 1.45), LONGEST * short),
    short,
    turn: random.normal(0, 0.7),
    height,
    wettedAt: random.uniform(0, 2 * Math.PI),
    wetted: random.uniform(0.4, 0.9),
    seed: random.seed(),
  };
}

interface Touched {
  readonly k: number;
  readonly part: "metal" | "crease";
  readonly share: number;
}
export type LumpTrace = readonly Touched[];

/** Half width of the crease where it did not wet in, mm. */
const CREASE = { half: 0.2, depth: 0.16 };
/** What lies below shows through less: heights are evened out over this, mm. */
const EVENED = 0.9;

/** Distance from the middle in units of its uneven outline, and the direction. */
function placeIn(lump: RestartLump, px: number, py: number): { d: number; angle: number } {
  const c = Math.cos(lump.turn);
  const s = Math.sin(lump.turn);
  const a = ((px - lump.x) * c + (py - lump.y) * s) / lump.long;
  const b = ((py - lump.y) * c - (px - lump.x) * s) / lump.short;
  const angle = Math.atan2(b, a);
  const far = hypot(a, b);
  const lobes =
    0.22 * gradient2(0.9 * Math.cos(angle) + 3.3, 0.9 * Math.sin(angle), lump.seed) +
    0.1 * gradient2(2.2 * Math.cos(angle), 2.2 * Math.sin(angle) + 5, lump.seed + 1) +
    0.03 * gradient2(px / 1.2, py / 1.2, lump.seed + 2);
  // its top is smooth: only the border is uneven
  return { d: far / (1 + lobes * ease(0.35, 0.95, far)), angle };
}

const evened = ({ grid, z }: Field, x: number, y: number): number =>
  (sampleAt(grid, z, x - EVENED, y) +
    sampleAt(grid, z, x + EVENED, y) +
    sampleAt(grid, z, x, y - EVENED) +
    sampleAt(grid, z, x, y + EVENED)) /
  4;

/** Heaps the lump on the metal: steep and creased where it did not wet in, running out where it did. Marks it as its run's metal. */
export function heapLump(field: Field, lump: RestartLump): LumpTrace {
  const { grid, z } = field;
  const trace: Touched[] = [];
  const reach = 1.9 * Math.max(lump.long, lump.short);
  const raised: [k: number, height: number][] = [];
  const box = { x0: lump.x - reach, x1: lump.x + reach, y0: lump.y - reach, y1: lump.y + reach };
  const smaller = Math.min(lump.long, lump.short);
  forEachPixel(grid, box, (k, px, py) => {
    const { d, angle } = placeIn(lump, px, py);
    const towards = 0.5 + 0.5 * Math.cos(angle - lump.wettedAt);
    const wet = ease(1 - lump.wetted - 0.25, 1 - lump.wetted + 0.25, towards);
    const out = 1 + 0.5 * wet;
    if (d > out + 0.3) return;
    let height = z[k];
    if (d < out) {
      const profile = (1 - (d / out) ** 2) ** (0.62 + 0.9 * wet);
      const covered = ease(0, 0.35, profile);
      const wrinkles = 0.06 * gradient2(px / 1.1, py / 2.6, lump.seed + 3) + 0.04 * gradient1(4 * d, lump.seed + 4);
      const bulge = 0.94 + 0.14 * gradient2(px / 2.2, py / 1.8, lump.seed + 5);
      height += 0.4 * covered * (Math.max(evened(field, px, py), z[k] - 0.3) - z[k]);
      height += lump.height * profile * bulge + wrinkles * covered;
      trace.push({ k, part: "metal", share: covered });
      if (profile > 0.1) {
        field.bead[k] = 1;
        field.run[k] = lump.run;
      }
    }
    const open = (1 - wet) * ease(-0.1, 0.4, gradient1(angle * 1.9, lump.seed + 6) + 0.05);
    const crease = Math.max(0, 1 - (Math.abs(d - 1.03) * smaller) / CREASE.half) * open;
    if (crease > 0) {
      height -= CREASE.depth * crease;
      trace.push({ k, part: "crease", share: crease });
      field.clean[k] = Math.max(field.clean[k], 0.3 * crease);
    }
    raised.push([k, height]);
  });
  for (const [k, height] of raised) z[k] = height;
  return trace;
}

/** A dull skin on the lump, oxide in the crease. */
export function paintLump(field: Field, lump: RestartLump, trace: LumpTrace): void {
  const { grid } = field;
  for (const { k, part, share } of trace) {
    const x = k % grid.columns;
    const y = (k - x) / grid.columns;
    const cloud = clamp(0.5 + 0.8 * gradient2(x / (1.4 * grid.perMm), y / (1.1 * grid.perMm), lump.seed + 8), 0, 1);
    if (part === "metal") mixMaterial(field, k, scaled(TONES.skin, 1.15), 0.5, 0.45, 0.22 * share * cloud);
    else mixMaterial(field, k, between(TONES.soot, TONES.gap, 0.5), 0.85, 0, 0.3 * ease(0.1, 0.8, share));
  }
}
