import { ease } from "../../math";
import type { RandomStream } from "../../random";
import { gradient2, value1 } from "../../surface";
import { mixColour, mixMaterial } from "../field";
import { scaled } from "../imperfections/tones";
import { tacksOf } from "../runs/tacks";
import type { FaceWork } from "../work";
import { boxAround, forEachPlatePixel } from "./patches";
import { PLATE_TONES as TONES } from "./tones";

/** An oval place on the plate that somebody ground smooth. Lengths in mm. */
export interface Dressing {
  readonly x: number;
  readonly y: number;
  readonly reachX: number;
  readonly reachY: number;
  /** Height left in the middle: the rest of a tack that was ground off. */
  readonly left: number;
  /** How bare the metal is, 0..1. */
  readonly bare: number;
}

/** Whatever the noise, nothing lies beyond this many reaches. */
const FURTHEST = 2.7;

/** Grinds one place: arcs of the disc, a smoky halo where something was welded on. Never touches weld metal. */
export function dress(work: FaceWork, dressing: Dressing, random: RandomStream): void {
  const { x, y, reachX, reachY, left, bare } = dressing;
  const angle = random.uniform(0, Math.PI);
  const radius = random.uniform(50, 62);
  const seed = random.seed();
  const centreX = x - Math.cos(angle) * radius;
  const centreY = y - Math.sin(angle) * radius;
  forEachPlatePixel(work, boxAround(x, y, 2 * reachX, 2 * reachY), (field, k, px, py) => {
    if (field.bead[k] > 0.3) return;
    const oval = Math.sqrt(((px - x) / reachX) ** 2 + ((py - y) / reachY) ** 2);
    if (oval > FURTHEST) return;
    const r = Math.sqrt((px - centreX) ** 2 + (py - centreY) ** 2);
    const d = oval * (1 + 0.22 * gradient2(px / 4, py / 4, seed)) + 0.09 * value1(r / 0.5, seed + 1);
    if (d > 2) return;
    const smoky = Math.max(0, 0.6 + 0.5 * gradient2(px / 3, py / 2.4, seed + 5));
    mixColour(field, k, TONES.smoke, 0.46 * ease(1.9, 1, d) * Math.min(1, smoky) * Math.min(1, bare + 0.3));
    const ground = bare * ease(1.15, 0.72, d + 0.1 * value1(r / 0.3, seed + 4));
    if (ground <= 0) return;
    const scratch = value1(r / 0.42, seed + 2) + 0.6 * value1(r / 1.1, seed + 3);
    field.z[k] += (field.parent[k] - 0.02 + left * (1 - d * d) + 0.005 * scratch - field.z[k]) * ground;
    mixMaterial(field, k, scaled(TONES.groundSteel, 0.7 + 0.1 * scratch + 0.12 * smoky), 0.44, 0.64, 0.88 * ground);
    field.brush[k] += (0.5 - field.brush[k]) * ground;
    if (ground > 0.5) field.brushAngle[k] = Math.atan2(py - centreY, px - centreX) + Math.PI / 2;
  });
}

/** Where the joint was tacked, mm from the datum: the root face shows what is left of the tacks. */
export function tackPlaces(work: FaceWork): readonly number[] {
  return tacksOf(work.joint, work.random.child("plate/tacks"));
}
