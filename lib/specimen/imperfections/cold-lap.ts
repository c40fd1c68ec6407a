import { clamp, ease, hypot } from "../../math";
import { forEachPixel, gradient1, gradient2 } from "../../surface";
import { type Field, mixMaterial } from "../field";
import { lapAt } from "../runs/fusion";
import { between, TONES } from "./tones";

/** Rear edge of a restart that did not fuse to the metal it lies on; mm. */
export interface ColdLap {
  readonly run: number;
  readonly direction: 1 | -1;
  /** Start of the electrode length and the middle of its pool across. */
  readonly x: number;
  readonly y: number;
  readonly halfWidth: number;
  readonly rearRadius: number;
  readonly seed: number;
  readonly slant: number;
  readonly ragged: number;
  /** Share of the edge that did fuse, about 0..1. */
  readonly fused: number;
  /** How cold it was laid: 0 it wetted out and hardly left a crease, 1 it froze as it fell. */
  readonly cold: number;
}

const CREASE_DEPTH = 0.22;
const ROLL_HEIGHT = 0.2;

/** x of the rear edge at y: the ragged line from which the deposit lets a restart merge into what it lies on. */
function rearEdge(lap: ColdLap, y: number): number {
  const across = clamp((y - lap.y) / lap.halfWidth, -1, 1);
  const ahead = lapAt({ lapSeed: lap.seed, lapSlant: lap.slant, lapRagged: lap.ragged }, y, across);
  return lap.x - lap.direction * (lap.rearRadius * Math.sqrt(1 - 0.949 * Math.abs(across)) - ahead);
}

interface Touched {
  readonly k: number;
  readonly share: number;
}

/** Rolls the rear edge of the new metal up a little and opens a tight crease before it, broken where it fused. */
export function cutColdLap(field: Field, lap: ColdLap): Touched[] {
  const touched: Touched[] = [];
  const reach = lap.rearRadius + 2;
  const wide = 1.05 * lap.halfWidth;
  const box = { x0: lap.x - reach, x1: lap.x + reach, y0: lap.y - wide, y1: lap.y + wide };
  forEachPixel(field.grid, box, (k, x, y) => {
    if (field.run[k] !== lap.run + 1) return;
    const inside = (x - rearEdge(lap, y)) * lap.direction;
    if (inside < -0.9 || inside > 1.6) return;
    const sideways = Math.abs(y - lap.y) / lap.halfWidth;
    const open = ease(-0.35, 0.3, gradient1(y / 1.9, lap.seed + 2) + 0.4 - lap.fused) * ease(1.02, 0.8, sideways);
    if (open <= 0) return;
    if (inside >= 0)
      field.z[k] += ROLL_HEIGHT * lap.cold * open * Math.exp(-inside / 0.5) * (1 - Math.exp(-inside / 0.12));
    const tight = 0.15 + 0.08 * gradient1(y / 1.3, lap.seed + 4);
    const crease = Math.max(0, 1 - Math.abs(inside + 0.02) / tight);
    field.z[k] -= CREASE_DEPTH * (0.3 + 0.7 * lap.cold) * open * crease;
    if (crease > 0) touched.push({ k, share: crease * open });
    if (inside < 0) field.clean[k] = Math.max(field.clean[k], 0.3 * crease);
  });
  return touched;
}

/** Darkens the crease and lays the dull oxide of the cold crater before it. */
export function paintColdLap(field: Field, lap: ColdLap, touched: readonly Touched[]): void {
  const box = { x0: lap.x - 8, x1: lap.x + 8, y0: lap.y - lap.halfWidth, y1: lap.y + lap.halfWidth };
  forEachPixel(field.grid, box, (k, x, y) => {
    if (field.run[k] !== lap.run + 1) return;
    const behind = (x - lap.x + lap.direction) / 4.5;
    const away = hypot(behind, (y - lap.y) / lap.halfWidth) + 0.5 * gradient2(x / 2, y / 1.6, lap.seed + 9);
    mixMaterial(field, k, TONES.oxide, 0.55, 0.35, (0.06 + 0.24 * lap.cold) * ease(1, 0.3, away));
  });
  for (const { k, share } of touched) {
    mixMaterial(
      field,
      k,
      between(TONES.soot, TONES.gap, lap.cold),
      0.85,
      0,
      (0.15 + 0.45 * lap.cold) * ease(0.2, 0.85, share),
    );
  }
}
