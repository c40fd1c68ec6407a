import { clamp, ease } from "../../math";
import type { RandomStream } from "../../random";
import { gradient2, sampleAt } from "../../surface";
import { type Field, mixMaterial } from "../field";
import type { FaceWork } from "../work";
import { boxAround, forEachPlatePixel, patchAt } from "./patches";
import { PLATE_TONES as TONES } from "./tones";

/** Where a globule of spatter sits and how large it is, mm. */
interface GlobulePlace {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/** What is known of a globule and of how it landed; the rest is drawn. */
export interface Landing {
  /** How much brighter than usual, -1..1; 0 if absent. */
  readonly bright?: number;
  /** Height over radius: 0.25 a splash, 0.95 a bead. */
  readonly rise?: number;
  /** Long over short axis, and the direction of the long axis in radians: the way it flew. */
  readonly stretch?: number;
  readonly turn?: number;
  /** Share of globules of which a part was knocked off. */
  readonly broken?: number;
}

/** Shares of ordinary globules that lost their top, and that came off whole. */
const KNOCKED = { half: 0.08, off: 0.12 };

interface Globule extends GlobulePlace {
  /** Long over short axis and the long axis's direction. */
  readonly stretch: number;
  readonly turn: number;
  /** Height over radius. */
  readonly rise: number;
  readonly dimpled: boolean;
  /** Knocked off: a bright spot is left. */
  readonly gone: boolean;
  /** What is left of it below a slanting break: level at its middle (1 untouched) and slope, over its height. */
  readonly left: number;
  readonly slantX: number;
  readonly slantY: number;
  /** Shape of the dome: below 0.5 flat-topped, above pointed. */
  readonly dome: number;
  readonly tone: number;
  readonly seed: number;
}

/**
 * Sets one globule of spatter on the surface as it stands: a lumpy flattened dome with a dark ring, one in four dimpled, some
 * broken at a slant, one in eight knocked off whole, leaving a bright spot. Off the plate it does nothing.
 */
export function placeGlobule(work: FaceWork, place: GlobulePlace, random: RandomStream, landing: Landing = {}): void {
  const home = patchAt(work, place.x, place.y);
  if (!home) return;
  const globule: Globule = {
    ...place,
    stretch: landing.stretch ?? random.uniform(1, 1.35),
    turn: landing.turn ?? random.uniform(0, Math.PI),
    rise: landing.rise ?? random.uniform(0.5, 0.95),
    dimpled: random.chance(0.25),
    gone: random.chance(KNOCKED.off),
    left: random.chance(landing.broken ?? KNOCKED.half) ? random.uniform(0.3, 0.75) : 1,
    slantX: random.normal(0, 0.35),
    slantY: random.normal(0, 0.35),
    dome: random.uniform(0.45, 0.85),
    tone: random.normal(0, 0.3) + (landing.bright ?? 0),
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
  { radius, rise, dimpled, tone, seed, left, slantX, slantY, dome }: Globule,
  ground: number,
): void {
  // scorched ring of oxide around the drop
  const scorch = clamp(0.5 + 0.8 * tone, 0.15, 0.75);
  if (d < 3.6) mixMaterial(field, k, TONES.oxide, 0.6, 0.2, scorch * (1 - d / 3.6) ** 2 * (1 - 0.6 * field.bead[k]));
  if (d >= 1) {
    if (d < 1.18) mixMaterial(field, k, TONES.slag, 0.7, 0, 0.6 * ease(1.18, 1, d));
    return;
  }
  const dimple = dimpled ? 0.3 * Math.exp(-5 * d * d) : 0;
  const lump = 1 + 0.16 * gradient2((1.9 * dx) / radius + 9, (1.9 * dy) / radius, seed + 2) - dimple;
  const whole = lump * (1 - d * d) ** dome;
  const grain = 0.08 * gradient2((3.4 * dx) / radius, (3.4 * dy) / radius, seed + 4);
  const plane = left < 1 ? Math.max(0.06, left + (slantX * dx + slantY * dy) / radius + grain) : whole;
  const isBroken = plane < whole;
  field.z[k] = Math.max(field.z[k], ground + radius * rise * Math.min(whole, plane));
  const bright = clamp(0.4 + tone + 0.5 * gradient2((2.3 * dx) / radius, (2.3 * dy) / radius, seed + 3), 0, 1);
  const share = ease(1, 0.85, d);
  mixMaterial(field, k, TONES.oxide, 0.52, 0.3 + 0.3 * bright, share);
  mixMaterial(field, k, TONES.beadSteel, 0.52, 0.3 + 0.3 * bright, 0.75 * bright * share);
  if (isBroken) mixMaterial(field, k, TONES.groundSteel, 0.48, 0.66, 0.75 * ease(0, 0.12, whole - plane));
  field.brush[k] *= 0.2;
}
