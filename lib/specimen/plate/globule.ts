import { clamp, ease } from "../../math";
import type { RandomStream } from "../../random";
import { gradient2, sampleAt } from "../../surface";
import { type Field, mixMaterial } from "../field";
import type { FaceWork } from "../work";
import { boxAround, forEachPlatePixel, patchAt } from "./patches";
import { PLATE_TONES as TONES } from "./tones";

/** Where a globule of spatter sits and how large it is, mm. */
export interface GlobulePlace {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

interface Globule extends GlobulePlace {
  /** Long over short axis and the long axis's direction. */
  readonly stretch: number;
  readonly turn: number;
  /** Height over radius. */
  readonly rise: number;
  readonly dimpled: boolean;
  /** Knocked off: a bright spot is left. */
  readonly gone: boolean;
  readonly tone: number;
  readonly seed: number;
}

/**
 * Sets one globule of spatter on the surface as it stands: a lumpy flattened dome with a dark ring, one in four dimpled, one in
 * eight knocked off, leaving a bright spot. Off the plate it does nothing.
 */
export function placeGlobule(work: FaceWork, place: GlobulePlace, random: RandomStream): void {
  const home = patchAt(work, place.x, place.y);
  if (!home) return;
  const globule: Globule = {
    ...place,
    stretch: random.uniform(1, 1.35),
    turn: random.uniform(0, Math.PI),
    rise: random.uniform(0.5, 0.95),
    dimpled: random.chance(0.25),
    gone: random.chance(0.12),
    tone: random.normal(0, 0.3),
    seed: random.seed(),
  };
  const ground = sampleAt(home.grid, home.z, place.x, place.y);
  const { x, y, radius, stretch, seed } = globule;
  const cosine = Math.cos(globule.turn);
  const sine = Math.sin(globule.turn);
  forEachPlatePixel(work, boxAround(x, y, radius * 4.5), (field, k, px, py) => {
    const dx = px - x;
    const dy = py - y;
    const along = (dx * cosine + dy * sine) / stretch;
    const across = dy * cosine - dx * sine;
    const lobed = 1 + 0.08 * gradient2((1.3 * dx) / radius, (1.3 * dy) / radius, seed);
    const d = (Math.hypot(along, across) / radius) * lobed;
    if (globule.gone) leaveSpot(field, k, d);
    else raise(field, k, d, dx, dy, globule, ground);
  });
}

function leaveSpot(field: Field, k: number, d: number): void {
  if (d >= 1) return;
  field.z[k] -= 0.03 * (1 - d * d);
  mixMaterial(field, k, TONES.groundSteel, 0.44, 0.66, 0.7 * ease(1, 0.7, d));
}

function raise(
  field: Field,
  k: number,
  d: number,
  dx: number,
  dy: number,
  { radius, rise, dimpled, tone, seed }: Globule,
  ground: number,
): void {
  // scorched ring of oxide around the drop
  if (d < 3.6) mixMaterial(field, k, TONES.oxide, 0.6, 0.2, 0.5 * (1 - d / 3.6) ** 2 * (1 - 0.6 * field.bead[k]));
  if (d >= 1) {
    if (d < 1.18) mixMaterial(field, k, TONES.slag, 0.7, 0, 0.6 * ease(1.18, 1, d));
    return;
  }
  const dimple = dimpled ? 0.3 * Math.exp(-5 * d * d) : 0;
  const lump = 1 + 0.16 * gradient2((1.9 * dx) / radius + 9, (1.9 * dy) / radius, seed + 2) - dimple;
  field.z[k] = Math.max(field.z[k], ground + radius * rise * lump * (1 - d * d) ** 0.62);
  const bright = clamp(0.4 + tone + 0.5 * gradient2((2.3 * dx) / radius, (2.3 * dy) / radius, seed + 3), 0, 1);
  const share = ease(1, 0.85, d);
  mixMaterial(field, k, TONES.oxide, 0.52, 0.3 + 0.3 * bright, share);
  mixMaterial(field, k, TONES.beadSteel, 0.52, 0.3 + 0.3 * bright, 0.75 * bright * share);
  field.brush[k] *= 0.2;
}
