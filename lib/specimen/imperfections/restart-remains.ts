import { clamp, ease, hypot, mix } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, gradient2, sampleAt } from "../../surface";
import { type Field, mixMaterial } from "../field";
import { between, TONES } from "./tones";

/** What a badly made restart leaves in the notch or the crater before it; mm and radians. */
export interface Remains {
  readonly kind: "slag" | "pinhole";
  readonly x: number;
  readonly y: number;
  readonly long: number;
  readonly short: number;
  readonly turn: number;
  readonly seed: number;
}

/** Remains stay smaller than what would be recorded beside the restart: half lengths, mm. */
const LARGEST = { slag: 0.85, pinhole: 0.18 };

/** Slag caught across the weld in a notch. */
export function drawCaughtSlag(random: RandomStream, x: number, y: number, halfWidth: number): Remains {
  return {
    kind: "slag",
    x,
    y: y + random.uniform(-0.5, 0.5) * halfWidth,
    long: Math.min(LARGEST.slag, halfWidth * random.uniform(0.14, 0.34)),
    short: random.uniform(0.2, 0.42),
    turn: Math.PI / 2 + random.normal(0, 0.35),
    seed: random.seed(),
  };
}

/** A fine hole off the middle of a crater that is half filled. */
export function drawPinhole(random: RandomStream, x: number, y: number, halfWidth: number): Remains {
  const long = random.uniform(0.12, LARGEST.pinhole);
  return {
    kind: "pinhole",
    x: x + random.normal(0, 0.16) * halfWidth,
    y: y + random.normal(0, 0.2) * halfWidth,
    long,
    short: long * random.uniform(0.5, 0.95),
    turn: random.uniform(0, Math.PI),
    seed: random.seed(),
  };
}

interface Touched {
  readonly k: number;
  readonly share: number;
  readonly value: number;
}
export type RemainsTrace = readonly Touched[];

const PINHOLE = { depth: 0.42, sunk: 0.06 };

/** Cuts a pinhole; of slag only the place is found, it is laid when the metal has been painted. */
export function cutRemains(field: Field, remains: Remains): RemainsTrace {
  const { grid, z } = field;
  const trace: Touched[] = [];
  const reach = 1.8 * remains.long;
  const c = Math.cos(remains.turn);
  const s = Math.sin(remains.turn);
  const level = sampleAt(grid, z, remains.x, remains.y);
  const box = { x0: remains.x - reach, x1: remains.x + reach, y0: remains.y - reach, y1: remains.y + reach };
  forEachPixel(grid, box, (k, px, py) => {
    const a = ((px - remains.x) * c + (py - remains.y) * s) / remains.long;
    const b = ((py - remains.y) * c - (px - remains.x) * s) / remains.short;
    const fine = Math.min(0.5, 0.8 * remains.long);
    const uneven = 0.3 * gradient2(px / fine, py / fine, remains.seed);
    const d = hypot(a, b) + (remains.kind === "slag" ? 1.5 : 0.8) * uneven;
    if (remains.kind === "pinhole") {
      if (d > 1.6) return;
      z[k] -= d < 1 ? PINHOLE.depth * (1 - d * d) ** 0.8 + PINHOLE.sunk : PINHOLE.sunk * ease(1.6, 1, d);
      if (d < 1.1) trace.push({ k, share: ease(1.1, 0.7, d), value: 1 - d });
      return;
    }
    // slag stands in what lies low
    const low = ease(0.22, -0.1, z[k] - level);
    const share = ease(1, 0.55, d) * low;
    if (share > 0) trace.push({ k, share, value: gradient2(px / 0.45, py / 0.45, remains.seed + 1) });
  });
  return trace;
}

export function paintRemains(field: Field, { kind }: Remains, trace: RemainsTrace): void {
  for (const { k, share, value } of trace) {
    if (kind === "pinhole") {
      mixMaterial(field, k, between(TONES.oxide, TONES.gap, clamp(1.3 * value, 0, 1)), 0.7, 0.1, 0.85 * share);
      continue;
    }
    const tone = between(TONES.slag, TONES.slagPale, clamp(0.2 + 0.5 * value, 0, 0.6));
    mixMaterial(field, k, tone, mix(0.45, 0.3, share), 0, 0.9 * share);
    field.z[k] += 0.05 * share * (1 + value);
    field.brush[k] *= 1 - share;
  }
}
