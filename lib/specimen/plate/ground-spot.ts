import { clamp, ease, hypot } from "../../math";
import type { RandomStream } from "../../random";
import { gradient2, value1 } from "../../surface";
import { mixColour, mixMaterial } from "../field";
import { scaled } from "../imperfections/tones";
import type { FaceWork } from "../work";
import { boxAround, forEachPlatePixel } from "./patches";
import { PLATE_TONES as TONES } from "./tones";

/** A place on the plate away from the weld where something was ground off with a few touches of a disc. Lengths in mm. */
interface GroundSpot {
  readonly x: number;
  readonly y: number;
  /** Half the length and width of what stood there, and its direction. */
  readonly long: number;
  readonly wide: number;
  readonly turn: number;
  /** Height left in the middle: the rest of what was welded on; 0 where a clamp only bit. */
  readonly left: number;
  /** How bright the metal still is, 0..1: it dulls within weeks. */
  readonly fresh: number;
}

/** One touch of the disc, lengths in mm, angles in radians. */
interface Touch {
  readonly x: number;
  readonly y: number;
  readonly turn: number;
  readonly half: number;
  readonly wide: number;
  readonly pressure: number;
  /** Curvature of its scratches, 1/mm. */
  readonly bow: number;
  readonly seed: number;
}

/** Scratches run on beyond the touch by this share of its half length at most. */
const RUN_OUT = 1.55;

/** Grinds one place, one touch after another, each from another side; heat has coloured the plate round what was welded on. */
export function grindSpot(work: FaceWork, spot: GroundSpot, random: RandomStream): void {
  if (spot.left > 0) scorch(work, spot, random.seed());
  const heading = random.uniform(0, Math.PI);
  const count = 3 + random.integer(4);
  // the hand works its way over the place and goes over it once more from another side, or does not
  const crosses = random.chance(0.4) ? random.integer(count) : count;
  const bow = random.pick([-1, 1]) / random.uniform(100, 130);
  for (let n = 0; n < count; n++) {
    const along = ((n + random.uniform(0, 1)) / count - 0.5) * 2 * spot.long;
    const across = random.normal(0, 0.4) * spot.wide;
    const crossing = n === crosses ? random.uniform(0.3, 0.9) : 0;
    touchWithDisc(work, spot, {
      x: spot.x + along * Math.cos(spot.turn) - across * Math.sin(spot.turn),
      y: spot.y + along * Math.sin(spot.turn) + across * Math.cos(spot.turn),
      turn: heading + random.normal(0, 0.09) + crossing,
      half: random.uniform(1.6, 5) + 0.3 * spot.long,
      wide: random.uniform(1, 2.6) + 0.25 * spot.wide,
      pressure: random.uniform(0.45, 1),
      bow,
      seed: random.seed(),
    });
  }
}

function scorch(work: FaceWork, { x, y, long, wide, turn }: GroundSpot, seed: number): void {
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  forEachPlatePixel(work, boxAround(x, y, Math.max(long, wide) + 6), (field, k, px, py) => {
    if (field.bead[k] > 0.3) return;
    const u = Math.abs((px - x) * c + (py - y) * s) - long;
    const v = Math.abs((py - y) * c - (px - x) * s) - wide;
    const away = hypot(Math.max(0, u), Math.max(0, v)) + 1.4 * gradient2(px / 4.5, py / 3.6, seed);
    if (away > 4.5) return;
    const smoky = clamp(0.5 + 0.9 * gradient2(px / 2.4, py / 2, seed + 5), 0, 1);
    mixColour(field, k, TONES.smoke, 0.26 * ease(4.5, 0, away) * smoky);
  });
}

function touchWithDisc(work: FaceWork, spot: GroundSpot, touch: Touch): void {
  const { x, y, turn, half, wide, pressure, bow, seed } = touch;
  const { left, fresh } = spot;
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  const reach = RUN_OUT * half;
  const box = boxAround(x, y, reach * Math.abs(c) + wide + 1, reach * Math.abs(s) + wide + 1);
  forEachPlatePixel(work, box, (field, k, px, py) => {
    const along = (px - x) * c + (py - y) * s;
    const across = (py - y) * c - (px - x) * s + bow * along * along;
    if (Math.abs(across) > wide || Math.abs(along) > reach || field.bead[k] > 0.3) return;
    const line = across + 40;
    const grit = value1(line / 0.32, seed);
    const bundle = value1(line / 1.1, seed + 1);
    const place = Math.abs(along) / (half * (1 + 0.3 * bundle + 0.25 * grit));
    if (place >= 1) return;
    const beside = across / wide;
    // it bites at once and slides off, and of every touch only some of the grit reaches its borders
    const met = 1 - beside * beside - place * place * (along < 0 ? place * place : 1);
    const share = pressure * ease(0, 0.75, met + 0.42 * grit + 0.2 * bundle - 0.1);
    if (share <= 0) return;
    const scratch = grit + 0.6 * bundle;
    const rest = left * Math.max(0, 1 - hypot(px - spot.x, py - spot.y) / spot.long);
    field.z[k] += (field.parent[k] - 0.02 + rest + 0.006 * scratch - field.z[k]) * share;
    const light = 0.58 + 0.16 * fresh + 0.1 * scratch;
    mixMaterial(field, k, scaled(TONES.groundSteel, light), 0.52 - 0.12 * fresh, 0.6, (0.5 + 0.4 * fresh) * share);
    if (share < 0.4) return;
    field.brush[k] = (0.3 + 0.35 * fresh) * share;
    field.brushAngle[k] = turn - 2 * bow * along;
  });
}
