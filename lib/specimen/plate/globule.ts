import { clamp, ease, hypot, mix } from "../../math";
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
  /** How far its foot has wetted the plate: 0 a cold bead that only sits on it .. 1 run into it. */
  readonly fused: number;
  readonly seed: number;
}

/**
 * Sets one globule of spatter on the surface as it stands: a flattened dome that wets the plate more or less, rings of heat round it, one in four dimpled, some
 * broken at a slant, one in eight knocked off whole, leaving a bright spot. Off the plate it does nothing.
 */
export function placeGlobule(work: FaceWork, place: GlobulePlace, random: RandomStream, landing: Landing = {}): void {
  const home = patchAt(work, place.x, place.y);
  if (!home) return;
  // heavy drops are still liquid when they land
  const sunk = mix(1, 0.7, ease(0.35, 0.85, place.radius));
  const globule: Globule = {
    ...place,
    stretch: landing.stretch ?? random.uniform(1, 1.35),
    turn: landing.turn ?? random.uniform(0, Math.PI),
    rise: sunk * (landing.rise ?? random.uniform(0.35, 0.72)),
    dimpled: random.chance(0.25),
    gone: random.chance(KNOCKED.off),
    left: random.chance(landing.broken ?? KNOCKED.half) ? random.uniform(0.3, 0.75) : 1,
    slantX: random.normal(0, 0.35),
    slantY: random.normal(0, 0.35),
    dome: random.uniform(0.5, 1),
    tone: random.normal(0, 0.3) + (landing.bright ?? 0),
    fused: random.uniform(0, 1),
    seed: random.seed(),
  };
  const ground = sampleAt(home.grid, home.z, place.x, place.y);
  const { x, y, radius, stretch, seed } = globule;
  const cosine = Math.cos(globule.turn);
  const sine = Math.sin(globule.turn);
  // a splash runs out in lobes, a bead stays round
  const lobes = mix(0.3, 0.07, ease(0.2, 0.6, globule.rise));
  forEachPlatePixel(work, boxAround(x, y, radius * 4.5), (field, k, px, py) => {
    const dx = px - x;
    const dy = py - y;
    const along = (dx * cosine + dy * sine) / stretch;
    const across = dy * cosine - dx * sine;
    const lobed = 1 + lobes * gradient2((0.8 * dx) / radius, (0.8 * dy) / radius, seed);
    const d = (hypot(along, across) / radius) * lobed;
    if (globule.gone) leaveSpot(field, k, d);
    else raise(field, k, d, dx, dy, globule, ground);
  });
}

function leaveSpot(field: Field, k: number, d: number): void {
  if (d >= 1) return;
  field.z[k] -= 0.03 * (1 - d * d);
  mixMaterial(field, k, TONES.groundSteel, 0.44, 0.66, 0.45 * ease(1, 0.5, d));
}

/** Beyond its edge a drop that was still hot has wetted the plate, in radii. */
const SKIRT = 1.45;
/** Drops as large as this mark the plate with all colours; the smallest are cold before they land, mm. */
const HOT = { none: 0.1, full: 0.5 };

function raise(
  field: Field,
  k: number,
  d: number,
  dx: number,
  dy: number,
  { radius, rise, dimpled, tone, seed, left, slantX, slantY, dome, fused }: Globule,
  ground: number,
): void {
  const hot = ease(HOT.none, HOT.full, radius);
  // on mill scale no colours show
  const heat = hot * fused * mix(0.15, 1, field.band[k]);
  const haze = d * (1 + 0.16 * gradient2(dx / radius / 1.4, dy / radius / 1.4, seed + 5));
  const bare = 1 - 0.7 * field.bead[k];
  // ring of oxide round the drop, beyond it the colours of the heat
  if (haze < 3.8) {
    const scorch = clamp(0.34 + 0.5 * tone, 0.1, 0.6) * mix(0.35, 1, hot);
    mixMaterial(field, k, TONES.warm, 0.48, 0.5, 0.3 * heat * bare * ease(3.8, 3, haze) * ease(1.9, 2.7, haze));
    mixMaterial(field, k, TONES.blue, 0.46, 0.4, 0.24 * heat * bare * ease(2.8, 2.1, haze) * ease(1.2, 1.7, haze));
    mixMaterial(field, k, TONES.oxide, 0.58, 0.22, scorch * bare * ease(2.4, 0.9, haze));
  }
  if (d >= 1) {
    if (d >= SKIRT) return;
    const foot = ((SKIRT - d) / (SKIRT - 1)) ** 2;
    field.z[k] +=
      0.07 * fused * radius * rise * foot * (1 + 0.5 * gradient2((1.6 * dx) / radius, (1.6 * dy) / radius, seed + 6));
    // only where it did not wet the plate is there a gap under its edge
    mixMaterial(field, k, TONES.slag, 0.7, 0, 0.5 * (1 - fused) * mix(0.4, 1, hot) * ease(1.16, 1, d));
    return;
  }
  const dimple = dimpled ? 0.3 * Math.exp(-5 * d * d) : 0;
  const lump = 1 + 0.12 * gradient2((0.9 * dx) / radius + 9, (0.9 * dy) / radius, seed + 2) - dimple;
  const wrinkle = 0.025 * gradient2((3 * dx) / radius, (3 * dy) / radius, seed + 7);
  const whole = 0.07 * fused + (lump + wrinkle) * (1 - d * d) ** dome;
  const grain = 0.08 * gradient2((3.4 * dx) / radius, (3.4 * dy) / radius, seed + 4);
  const plane = left < 1 ? Math.max(0.06, left + (slantX * dx + slantY * dy) / radius + grain) : whole;
  const isBroken = plane < whole;
  field.z[k] = Math.max(field.z[k], ground + radius * rise * Math.min(whole, plane));
  const skin = 0.5 * gradient2((0.8 * dx) / radius, (0.8 * dy) / radius, seed + 3);
  const bright = clamp(0.5 + tone + skin + 0.12 * gradient2((3 * dx) / radius, (3 * dy) / radius, seed + 8), 0, 1);
  const share = ease(1, 0.8, d) * mix(0.55, 0.9, hot);
  mixMaterial(field, k, TONES.oxide, 0.5, 0.3 + 0.3 * bright, share * mix(0.85, 0.5, bright));
  mixMaterial(field, k, TONES.beadSteel, 0.46, 0.4 + 0.3 * bright, 0.8 * bright * share);
  if (isBroken) mixMaterial(field, k, TONES.groundSteel, 0.48, 0.66, 0.6 * ease(0, 0.12, whole - plane));
  field.brush[k] *= 1 - 0.8 * share;
}
